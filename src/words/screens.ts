import type { RigKind } from '#wire/rigs.ts';
import type { Role } from '#wire/role.ts';

/** The name of the tool, as a person reads it. */
export const PRODUCT = 'Rigledger';

export const SEVERITY_WORDS = {
  blocker: { one: 'blocker', many: 'blockers' },
  caution: { one: 'caution', many: 'cautions' },
  note: { one: 'note', many: 'notes' },
} as const;

/** Where the edits of a screen stand. */
export const SAVE_WORDS = {
  opening: 'opening',
  saved: 'saved',
  saving: 'saving',
  'on-device': 'on this device only',
  'read-only': 'read only',
  refused: 'not saved',
} as const;

export const KIT_WORDS = {
  skip: 'Skip to the main part',
  tableOf: (caption: string) => `${caption}, table`,
  cancel: 'Cancel',
  close: 'Close',
  loading: 'Loading…',
  crew: 'Crew',
  retry: 'Try again',
  showMore: (more: number, all: number) =>
    `Show ${more.toLocaleString('en-GB')} more of ${all.toLocaleString('en-GB')}`,
} as const;

export const THEME_WORDS = {
  label: 'Day or dark',
  hint: 'Holds on this device.',
  names: { device: 'As the device', day: 'Day', dark: 'Dark auditorium' },
} as const;

export const UNREACHABLE = {
  what: 'The server does not answer.',
  next: 'Check that this device is on the network, then try again.',
} as const;

export const NOTICE_WORDS = { reload: 'Load the page again', home: 'To your rigs' } as const;

export const BROKEN = {
  title: 'Broken',
  what: 'This page broke.',
  next: 'What the server had confirmed as saved is safe. Load the page again; if it breaks again, tell whoever runs this installation what you did.',
} as const;

export const NOT_FOUND = {
  title: 'Not found',
  what: 'There is no such page.',
  next: 'Check the address, or start from your rigs.',
} as const;

export const OFFLINE = {
  title: 'No network',
  what: 'This page needs the network.',
  next: 'Rigs that you opened on this device before still open, and take edits, without it.',
} as const;

export const PLAIN_HTTP = {
  what: 'This page came over plain HTTP.',
  next: 'Others on this network can read what you send, your password too. Pages do not open without a network here. Ask whoever runs this installation for an https:// address.',
} as const;

export const ROLE_WORDS: Readonly<Record<Role, { readonly name: string; readonly may: string }>> = {
  lead: { name: 'lead', may: 'runs the crew: members, invitations, venues, rigs' },
  editor: { name: 'editor', may: 'edits rigs and venues' },
  reader: { name: 'reader', may: 'looks on and takes sheets out' },
};

export const RIG_KIND_WORDS: Readonly<Record<RigKind, string>> = { show: 'show rig', house: 'house rig' };

/** `1 member`, `2 members`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;
}

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
const MOMENT = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });

const TIME = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** `14:02`, of an ISO 8601 moment, in this device's time zone. */
export const sayTime = (iso: string) => TIME.format(new Date(iso));

/** `25 November 2026`, of an ISO 8601 moment, in this device's time zone. */
export const sayDay = (iso: string) => DAY.format(new Date(iso));

/** `25 Nov, 14:02`. */
export const sayMoment = (iso: string) => MOMENT.format(new Date(iso));
