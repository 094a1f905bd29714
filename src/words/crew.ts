import { ROLE_WORDS } from './screens.ts';

export const CREW_WORDS = {
  roles: `A lead ${ROLE_WORDS.lead.may}; an editor ${ROLE_WORDS.editor.may}; a reader ${ROLE_WORDS.reader.may}.`,
  members: 'Members',
  name: 'Name',
  email: 'E-mail',
  role: 'Role',
  joined: 'Since',
  you: 'you',
  remove: 'Remove',
  removeAsk: 'Remove…',
  roleOf: (name: string) => `Role of ${name}`,
  removeTitle: (name: string) => `Remove ${name}?`,
  removeAbout: 'They lose sight of all rigs and venues of this crew at once. What they edited stays.',
  leave: 'Leave this crew',
  leaveTitle: (crew: string) => `Leave ${crew}?`,
  leaveAbout: 'You lose sight of all its rigs and venues. A lead can invite you again.',
  leaveSubmit: 'Leave',
  rename: 'Rename',
  renameTitle: 'Rename the crew',
  renameLabel: 'Name of the crew',
  renameSubmit: 'Rename it',
  venues: 'Venues',
  noVenues: 'No venues yet.',
  addVenue: 'Add a venue',
  venueName: 'Name of the venue',
  addVenueSubmit: 'Add it',
  renameVenueTitle: 'Rename the venue',
  rigs: 'Rigs',
  noRigs: 'No rigs yet.',
  renameRigTitle: 'Rename the rig',
  rigName: 'Name of the rig',
  removeRigAbout:
    'It closes for everybody who has it open, and leaves everybody’s list. A lead can bring it back for 30 days, as it is now; after that it is destroyed.',
} as const;

export const REMOVED_WORDS = {
  title: 'Removed rigs',
  about: 'Each can be brought back as it was, until its day. After that it is destroyed.',
  line: (by: string, on: string, until: string) =>
    `removed ${by === '' ? '' : `by ${by} `}on ${on}, can be brought back until ${until}`,
  bringBack: 'Bring back',
  destroy: 'Destroy now…',
  destroyTitle: (rig: string) => `Destroy ${rig}?`,
  destroyAbout:
    'Everything that is kept of it is deleted: all units, its whole history, every revision, and the records of its handovers. Nobody can bring it back.',
  destroySubmit: 'Destroy it',
} as const;

export const TYPED_WORDS = {
  label: (name: string) => `Type its name to confirm: ${name}`,
  unlike: 'This is not its name yet.',
} as const;

export const INVITE_WORDS = {
  title: 'Invitations',
  about: 'Each link lets one person in and then is used up.',
  none: 'No open links.',
  make: 'Make an invitation link',
  role: 'What they will be',
  submit: 'Make the link',
  ready: 'The link is ready',
  link: 'Invitation link',
  linkHint: (until: string) => `Send it to one person. It is shown only now, and ends on ${until}.`,
  copy: 'Copy the link',
  copied: 'Copied.',
  copyByHand: 'The link is selected. Copy it with Ctrl+C, or ⌘C.',
  revoke: 'End this link',
  open: (role: string, by: string, until: string) => `${role}, made by ${by}, ends on ${until}`,
} as const;

export const JOIN_WORDS = {
  title: 'Invitation',
  looking: 'Looking at the invitation…',
  offer: (crew: string, role: string) => `${crew} invites you as ${role}.`,
  means: (may: string) => `In this crew that means: ${may}.`,
  accept: (crew: string) => `Join ${crew}`,
  member: (crew: string) => `You are in ${crew} already. The link stays open for somebody else.`,
  toRigs: 'To your rigs',
  signedOut: 'Sign in or make an account first; the invitation waits here.',
  as: (name: string, email: string) => `You are signed in as ${name}, ${email}.`,
  ended: {
    gone: {
      what: 'This invitation does not exist.',
      next: 'Check that the link is whole, or ask the lead of the crew for a new one.',
    },
    used: {
      what: 'This invitation was used already.',
      next: 'Each link lets one person in. Ask the lead of the crew for a new one.',
    },
    expired: { what: 'This invitation has expired.', next: 'Ask the lead of the crew for a new one.' },
  },
} as const;
