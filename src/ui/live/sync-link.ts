import { STATUS_WORDS } from '#words/sheet.ts';
import type { PersonHere, RigLink, SaveStatus } from './link.ts';
import type { RigClient } from './sync/rig-client.ts';
import type { SyncState, SyncTrouble } from './sync/sync-state.ts';

/** What a person may do as far as is known before the server has said it. */
export type KnownRole = 'writer' | 'reader';

export interface SyncLinkOptions {
  /** Holds until the server has said my role. */
  readonly known: KnownRole;
  /** What is said when what was open is not mine any more. */
  readonly gone: string;
}

/** The link of a store over a client of the sync service. */
export function syncLink(client: RigClient, { known, gone }: SyncLinkOptions): RigLink {
  let from = client.state();
  let people = othersOf(from);
  let status = saveStatus(from, from.role ?? known, gone);
  const follow = () => {
    const state = client.state();
    if (state === from) return;
    if (state.people !== from.people || state.me !== from.me) people = othersOf(state);
    status = saveStatus(state, state.role ?? known, gone);
    from = state;
  };
  return {
    status() {
      follow();
      return status;
    },
    canEdit: () => client.state().filled && (client.state().role ?? known) === 'writer',
    hasArrived: () => client.state().filled,
    people() {
      follow();
      return people;
    },
    setWhere: (where) => client.setWhere(where),
    onChange: (listen) => client.subscribe(listen),
    close: () => void client.close(),
  };
}

const othersOf = ({ people, me }: SyncState): readonly PersonHere[] => people.filter(({ id }) => id !== me);

/** Where my edits stand, in the words of the screen. */
export function saveStatus(state: SyncState, role: KnownRole, gone: string): SaveStatus {
  const { unsaved, trouble } = state;
  if (trouble !== undefined) {
    return {
      state: unsaved > 0 || trouble === 'no-such-rig' ? 'refused' : 'on-device',
      detail: trouble === 'no-such-rig' ? gone : troubleWords(trouble, unsaved),
    };
  }
  if (state.link === 'loading' || !state.filled) return { state: 'opening', detail: openingWords(state.link) };
  if (role === 'reader') return { state: 'read-only', detail: state.link === 'live' ? '' : STATUS_WORDS.noNetwork };
  if (state.save === 'only-in-this-page') return { state: 'refused', detail: STATUS_WORDS.onlyHere(unsaved) };
  if (state.save === 'on-this-device') return { state: 'on-device', detail: STATUS_WORDS.waiting(unsaved) };
  if (state.save === 'saving') return { state: 'saving', detail: '' };
  if (state.link === 'live') return { state: 'saved', detail: state.copyTrouble ? STATUS_WORDS.notKept : '' };
  return { state: 'saved', detail: state.link === 'connecting' ? '' : STATUS_WORDS.noNetwork };
}

const openingWords = (link: SyncState['link']) => (link === 'offline' ? STATUS_WORDS.noNetwork : '');

function troubleWords(trouble: Exclude<SyncTrouble, 'no-such-rig'>, unsaved: number): string {
  switch (trouble) {
    case 'signed-out':
      return STATUS_WORDS.signedOut(unsaved);
    case 'other-version':
      return STATUS_WORDS.otherVersion;
    case 'too-large':
      return STATUS_WORDS.tooLarge;
  }
}
