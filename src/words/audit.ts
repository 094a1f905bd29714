import { SHEET_KINDS } from '#engine/sheet/sheet.ts';
import { AUDIT_KINDS, type AuditKind, type AuditWhat } from '#wire/audit.ts';
import { Role } from '#wire/role.ts';
import { PRODUCT, ROLE_WORDS } from './screens.ts';
import { SHEET_TITLES } from './sheets.ts';

export const AUDIT_WORDS = {
  title: 'Audit',
  of: (crew: string) => `Audit of ${crew}`,
  about:
    'What was done with people, rigs and data of this crew, and by whom. What was edited in a rig is in its history.',
  link: 'Open the audit',
  crewAbout: 'Who joined and left, what was removed, frozen, handed over and taken out.',
  kind: 'What',
  person: 'By whom',
  anyKind: 'Everything',
  anybody: 'Everybody',
  nobody: `${PRODUCT} by itself`,
  older: 'Show older entries',
  none: 'Nothing of that kind is written down.',
  end: 'That is all.',
} as const;

interface Said {
  /** The kind, to be chosen from a list. */
  readonly kind: string;
  /** What was done, without who did it: names as they were on that day. */
  readonly says: (what: AuditWhat) => string;
}

const name = (text: string | undefined): string => (text === undefined || text === '' ? 'without a name' : `“${text}”`);
const person = (text: string | undefined): string => text ?? 'somebody';
const role = (text: string | undefined): string => {
  const known = Role.safeParse(text);
  return known.success ? ROLE_WORDS[known.data].name : 'member';
};
const revision = ({ number, rig }: AuditWhat): string => `revision ${number ?? '?'} of the rig ${name(rig)}`;
const toCrew = ({ crew }: AuditWhat): string => (crew === undefined ? '' : ` to the crew ${name(crew)}`);
const ofCrew = ({ crew }: AuditWhat): string => (crew === undefined ? '' : ` of the crew ${name(crew)}`);
const sheet = (text: string | undefined): string => {
  const kind = SHEET_KINDS.find((known) => known === text);
  return kind === undefined ? 'sheet' : SHEET_TITLES[kind].toLowerCase();
};

/** What each kind of entry says. */
const SAID: Readonly<Record<AuditKind, Said>> = {
  'crew-made': { kind: 'Crew started', says: ({ crew }) => `Started the crew ${name(crew)}.` },
  'crew-renamed': {
    kind: 'Crew renamed',
    says: ({ crew, was }) => `Renamed the crew from ${name(was)} to ${name(crew)}.`,
  },
  'invitation-made': { kind: 'Invitation made', says: (what) => `Made an invitation link for one ${role(what.role)}.` },
  'invitation-used': {
    kind: 'Invitation used',
    says: (what) => `Joined by an invitation link, as ${role(what.role)}.`,
  },
  'invitation-withdrawn': {
    kind: 'Invitation ended',
    says: (what) => `Ended an invitation link for one ${role(what.role)}, which nobody had used.`,
  },
  'role-changed': {
    kind: 'Role changed',
    says: (what) => `Made ${person(what.person)} ${role(what.role)}; before that: ${role(what.was)}.`,
  },
  'member-removed': {
    kind: 'Member removed',
    says: (what) => `Removed ${person(what.person)}, who was ${role(what.role)}.`,
  },
  'member-left': { kind: 'Member left', says: (what) => `Left the crew, as ${role(what.role)}.` },
  'rig-made': { kind: 'Rig made', says: ({ rig }) => `Made the rig ${name(rig)}.` },
  'rig-started': {
    kind: 'Rig started',
    says: ({ rig, was, number }) => `Started the rig ${name(rig)} from revision ${number ?? '?'} of ${name(was)}.`,
  },
  'rig-renamed': { kind: 'Rig renamed', says: ({ rig, was }) => `Renamed the rig ${name(was)} to ${name(rig)}.` },
  'rig-removed': { kind: 'Rig removed', says: ({ rig }) => `Removed the rig ${name(rig)}.` },
  'rig-brought-back': { kind: 'Rig brought back', says: ({ rig }) => `Brought back the rig ${name(rig)}.` },
  'rig-destroyed': {
    kind: 'Rig destroyed',
    says: ({ rig }) => `Destroyed the rig ${name(rig)} with everything that was kept of it.`,
  },
  frozen: { kind: 'Revision frozen', says: (what) => `Froze ${revision(what)}.` },
  'handover-offered': { kind: 'Handover offered', says: (what) => `Offered ${revision(what)}${toCrew(what)}.` },
  'handover-withdrawn': { kind: 'Handover withdrawn', says: (what) => `Withdrew the offer of ${revision(what)}.` },
  'handover-accepted': { kind: 'Handover accepted', says: (what) => `Accepted ${revision(what)}${ofCrew(what)}.` },
  'handover-declined': { kind: 'Handover declined', says: (what) => `Declined ${revision(what)}${ofCrew(what)}.` },
  'handover-received': { kind: 'Handover received', says: (what) => `Received ${revision(what)}${ofCrew(what)}.` },
  'handover-written': {
    kind: 'Handover file written',
    says: (what) => `Took ${revision(what)} out as a handover file.`,
  },
  'handover-read': {
    kind: 'Handover file read',
    says: (what) => `Brought in ${revision(what)}${ofCrew(what)} from a handover file.`,
  },
  'proposal-made': { kind: 'Proposal made', says: ({ rig }) => `Proposed changes to the house rig ${name(rig)}.` },
  'proposal-accepted': {
    kind: 'Proposal accepted',
    says: ({ rig }) => `Accepted proposed changes to the house rig ${name(rig)}.`,
  },
  'proposal-declined': {
    kind: 'Proposal declined',
    says: ({ rig }) => `Declined proposed changes to the house rig ${name(rig)}.`,
  },
  'proposal-withdrawn': {
    kind: 'Proposal withdrawn',
    says: ({ rig }) => `Withdrew proposed changes to the house rig ${name(rig)}.`,
  },
  'sheet-out': {
    kind: 'Sheet taken out',
    says: (what) => `Took out the ${sheet(what.sheet)} of the rig ${name(what.rig)}.`,
  },
  'type-out': {
    kind: 'Type taken out',
    says: ({ type, number }) => `Took out the type ${name(type)}, revision ${number ?? '?'}, as a file.`,
  },
  'type-removed': { kind: 'Type removed', says: ({ type }) => `Removed the type ${name(type)} from the library.` },
  'archive-out': { kind: 'Archive taken out', says: ({ crew }) => `Took out everything of the crew ${name(crew)}.` },
  'archive-in': {
    kind: 'Archive brought in',
    says: ({ crew }) => `Brought in the archive of the crew ${name(crew)}. What is older comes from there.`,
  },
};

/** What an entry says, as a sentence whose subject is who did it. */
export const auditSentence = (kind: AuditKind, what: AuditWhat): string => SAID[kind].says(what);

/** The kinds to choose from, by name. */
export const AUDIT_CHOICES: readonly { readonly value: AuditKind; readonly label: string }[] = AUDIT_KINDS.map(
  (value) => ({ value, label: SAID[value].kind }),
).sort((a, b) => a.label.localeCompare(b.label, 'en-GB'));
