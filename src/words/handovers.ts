import type { HandoverSummary, OfferedRevision } from '#wire/handovers.ts';
import { countedSeverity } from './findings.ts';
import { shortHash } from './revisions.ts';
import { counted, RIG_KIND_WORDS, sayDay } from './screens.ts';

/** Giving a revision away, on the page of a rig's revisions. */
export const OFFER_WORDS = {
  open: 'Hand over…',
  openName: (number: number) => `Hand over revision ${number}…`,
  title: (number: number) => `Hand over revision ${number}`,
  about:
    'The other crew gets this revision as it was frozen: patch, copied types, findings, faults, hired items, notes, contacts, and the hazards with who has to sign. It gets nothing that is changed later, and no way into this rig.',
  words: 'What they should know',
  wordsHint: 'Whoever holds the link or the file reads this.',
  makeLink: 'Make a link',
  saveFile: 'Save as a file',
  fileAbout:
    'A link is for crews on this installation. A file is for any other: send it as you like, and treat it as you would treat the plans.',
  ready: 'The link is ready',
  link: 'Link of the handover',
  linkHint: (until: string) =>
    `Send it to one person of the other crew. It is shown only now, works once, and ends on ${until}. You can take it back until they accept.`,
  saved: (name: string) => `The file is saved as “${name}”.`,
  takeBack: 'Take it back',
  takeBackTitle: 'Take the offer back?',
  takeBackAbout: 'The link stops working at once. You can make another one.',
} as const;

/** What became of offers, on the page of revisions and of a crew. */
export const HANDOVERS_WORDS = {
  title: 'Handovers',
  about: 'Revisions that this crew gave to others, and those it was offered.',
  none: 'Nothing was handed over yet. Give a revision away on the page of its rig’s revisions.',
  bring: 'Bring in a handover file',
  toRig: 'Open the rig',
  given: (rig: string, number: number) => `Given: “${rig}”, revision ${number}`,
  received: (rig: string, number: number, crew: string) => `From ${crew}: “${rig}”, revision ${number}`,
  said: (by: string, words: string) => `${by}: “${words}”`,
} as const;

/** `Offered by Gil on 25 November 2026; open until 9 December 2026.` */
export function handoverState(handover: HandoverSummary): string {
  const { by, at, state, expiresAt, decidedBy, decidedAt, toCrewName } = handover;
  const offered = `Offered by ${by} on ${sayDay(at)}`;
  const who = `${decidedBy ?? ''}${toCrewName === null ? '' : ` for ${toCrewName}`}`;
  const when = decidedAt === null ? '' : ` on ${sayDay(decidedAt)}`;
  switch (state) {
    case 'offered':
      return `${offered}; open until ${sayDay(expiresAt)}.`;
    case 'expired':
      return `${offered}; nobody answered until ${sayDay(expiresAt)}.`;
    case 'accepted':
    case 'declined':
      return `${offered}; ${state} by ${who}${when}.`;
    case 'withdrawn':
      return `${offered}; taken back by ${who}${when}.`;
  }
}

/** What somebody gets who follows a link or brings in a file. */
export const RECEIVE_WORDS = {
  title: 'Handover',
  fileTitle: 'Bring in a handover file',
  fileAbout:
    'A handover file comes from a crew on another installation. It is looked at first; nothing is kept of it until you take it in.',
  choose: 'Choose a handover file',
  reading: 'Reading the file…',
  unreadable: 'This device cannot read the file. Choose it again.',
  tooLarge: 'The file is larger than any handover. Check that you chose the right one.',
  offer: ({ crewName, rigName, number }: OfferedRevision) => `${crewName} hands over “${rigName}”, revision ${number}.`,
  rig: ({ rigKind, venueName, units, counts }: OfferedRevision) => {
    const kind = RIG_KIND_WORDS[rigKind];
    const found = (['blocker', 'caution', 'note'] as const)
      .filter((severity) => counts[severity] > 0)
      .map((severity) => countedSeverity(counts[severity], severity));
    return [kind.charAt(0).toUpperCase() + kind.slice(1), venueName, counted(units, 'unit'), ...found]
      .filter((part) => part !== null)
      .join(' · ');
  },
  from: ({ by, at, frozenAt, note, hash }: OfferedRevision) =>
    `Given by ${by} on ${sayDay(at)}. Frozen on ${sayDay(frozenAt)}${note === '' ? '' : `: ${note}`}. Short hash, to read aloud: ${shortHash(hash)}.`,
  noWords: 'They said nothing with it.',
  until: (expiresAt: string) => `The offer is open until ${sayDay(expiresAt)}.`,
  hazards: 'What can hurt, and who signs for it',
  noHazards:
    'No type of this rig is known to have a hazard. That is no promise that there is none: look at the units and their manuals.',
  faults: 'Open faults',
  noFaults: 'None is known.',
  hires: 'Hired in, due back',
  noHires: 'Nothing.',
  notes: 'Notes',
  noNotes: 'None.',
  findings: 'What the check found',
  noFindings: 'Nothing.',
  since: 'What changed since you last had it',
  sinceAbout: (rigName: string, at: string) => `Against what came to you as “${rigName}” on ${sayDay(at)}.`,
  sinceNever: 'This crew had nothing of this rig before.',
  lastHad: 'what you last had',
  offered: 'what is offered',
  answer: 'Your answer',
  fileAnswer: 'Take it in',
  crew: 'Receiving crew',
  name: 'Name of your rig',
  kind: 'What it is',
  venue: 'Venue',
  venueHint: 'A venue of your crew, if it is one of yours.',
  noVenue: 'none',
  words: 'Your words to the giver',
  wordsHint: 'Both crews keep them, with your name.',
  accept: (crew: string) => `Accept into ${crew}`,
  take: 'Make a rig of it',
  acceptAbout: 'You get a rig of your own that begins as this revision. From then on each crew edits its own.',
  decline: 'Decline',
  declineTitle: 'Decline this handover?',
  declineAbout: 'The link stops working. Your words go to the giver; if you change your mind, ask them for a new link.',
  declined: 'You declined this handover. The giver sees it, with your words.',
  noCrew:
    'You are in no crew that could take it: make a crew, or ask the lead of yours to let you edit. You can decline it all the same.',
  taken: 'This handover is yours already.',
  here: (rigName: string, at: string) =>
    `This revision is here already: it came in as “${rigName}” on ${sayDay(at)}. Bringing it in again makes a second rig.`,
  toRig: (rigName: string) => `Open “${rigName}”`,
  toYours: 'Open your rig',
} as const;
