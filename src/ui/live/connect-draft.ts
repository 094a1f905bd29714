import * as Y from 'yjs';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { draftSyncPath } from '#wire/library.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { browserLink } from './browser-link.ts';
import { type DraftStore, openDraftStore } from './draft-store.ts';
import type { KnownRole } from './sync-link.ts';

/** What is done on this screen, as opposed to what arrives. */
const MINE = Symbol('mine');

export interface ConnectDraftOptions {
  readonly user: string;
  readonly draft: string;
  /** The type of the revision it starts from, of which modes may be kept. */
  readonly base: FixtureType | null;
  readonly known: KnownRole;
}

/** Opens a draft of the server this page came from, for one person, with its copy on this device. */
export function connectDraft({ user, draft, base, known }: ConnectDraftOptions): DraftStore {
  const doc = new Y.Doc();
  const gone = DRAFT_SCREEN_WORDS.gone;
  const { link } = browserLink({ doc, user, id: draft, path: draftSyncPath(draft), known, gone });
  return openDraftStore({ doc, link, origin: MINE, base });
}
