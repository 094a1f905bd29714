import type { Field } from '#engine/model/field.ts';
import type { Severity } from '#engine/model/finding.ts';
import type { Provenance, RigRevisionSummary } from '#wire/record.ts';
import { countedSeverity, FIELD_WORDS } from './findings.ts';
import { listed } from './listed.ts';
import { counted, RIG_KIND_WORDS, sayDay, sayTime } from './screens.ts';

/** The page of a rig's revisions. */
export const REVISIONS_WORDS = {
  title: 'Revisions',
  about: 'A revision is the whole rig as it was at one moment: numbered, and never changed again.',
  none: 'Nothing is frozen yet. Freeze a revision before the rig goes to others, or before it is changed much.',
  freeze: 'Freeze a revision…',
  frozen: (number: number) => `The rig is frozen as revision ${number}.`,
  revision: (number: number) => `Revision ${number}`,
  named: (number: number) => `revision ${number}`,
  now: 'now',
  nowChoice: 'Now, as it is edited',
  noNote: 'Nothing was noted.',
  hash: 'Short hash, to read aloud',
  look: 'Look at it',
  lookName: (number: number) => `Look at revision ${number}`,
  withNow: 'Compare with now',
  withNowName: (number: number) => `Compare revision ${number} with now`,
  withBefore: (number: number) => `Compare with revision ${number}`,
  withBeforeName: (number: number, before: number) => `Compare revision ${number} with revision ${before}`,
  start: 'Start a show rig from this…',
  startName: (number: number) => `Start a show rig from revision ${number}…`,
  all: 'All revisions',
  compare: 'Compare',
  from: 'From',
  to: 'To',
  swap: 'The other way round',
  same: 'Choose two that are not the same.',
  gone: (number: number) => `This rig has no revision ${number}. Choose one of the list.`,
  damaged: 'What the server sent of this revision cannot be read. Tell whoever looks after this installation.',
  newer: 'This revision was frozen by a newer version of this program. Load the page again.',
  units: 'Units',
  noUnits: 'No unit is in this revision.',
  findings: 'What the check found on that day',
  noFindings: 'The check found nothing.',
  unitsCaption: (number: number) => `Units of revision ${number}`,
  columns: {
    unit: 'Unit',
    channel: 'Channel',
    type: 'Type',
    mode: 'Mode',
    address: 'Address',
    circuit: 'Circuit',
    run: 'Run',
    purpose: 'Purpose',
  },
  acceptedBy: (by: string) => `accepted by ${by}`,
} as const;

/** Freezing: a note, and a name for every blocker that stands. */
export const FREEZE_WORDS = {
  title: 'Freeze a revision',
  about: 'The rig is kept as it is saved on the server now. It can be edited on at once.',
  note: 'Note',
  noteHint: 'What this revision is: as hung, after focus, before the tour.',
  blockers: (count: number) => `${counted(count, 'blocker')} ${count === 1 ? 'stands' : 'stand'} today`,
  blockersAbout: 'Clear them, or tick each one that somebody accepts. They are kept with the revision, with the name.',
  by: 'Accepted by',
  byHint: 'The name of the person who answers for it.',
  submit: 'Freeze it',
  missing: {
    unsaved: 'Your last edits are not saved yet. Waiting for the server.',
    onDevice: 'Your last edits are on this device only. Freezing waits until the server has them.',
    refused: 'Your last edits were not saved. See what the rig says about it first.',
    unticked: (count: number) =>
      count === 1
        ? 'One blocker is not accepted yet.'
        : `${count.toLocaleString('en-GB')} blockers are not accepted yet.`,
    unnamed: 'Nobody is named yet who accepts the blockers.',
  },
} as const;

/** Starting a show rig from a revision. */
export const START_WORDS = {
  title: (number: number) => `Start a show rig from revision ${number}`,
  name: 'Name of the show rig',
  nameHint: 'It begins as that revision, with the same units. What is changed in either later stays there.',
  crew: 'Crew',
  venue: 'Venue',
  noVenue: 'None',
  submit: 'Start it',
  noCrew: 'There is no crew in which you may make rigs. Ask a lead for the role of an editor.',
} as const;

/** The first eight figures of a hash, in two groups that can be read over a radio: `3fa2 90c1`. */
export const shortHash = (hash: string): string => `${hash.slice(0, 4)} ${hash.slice(4, 8)}`;

/** `1 blocker, 3 cautions`; that there were none. */
function countsText(counts: RigRevisionSummary['counts']): string {
  const said = (['blocker', 'caution', 'note'] as const satisfies readonly Severity[])
    .filter((severity) => counts[severity] > 0)
    .map((severity) => countedSeverity(counts[severity], severity));
  return said.length === 0 ? 'no findings' : said.join(', ');
}

/** By whom and when it was frozen, and what was in it. */
export const revisionFacts = ({ by, at, units, counts }: RigRevisionSummary): string =>
  `${by}, ${sayDay(at)}, ${sayTime(at)} · ${counted(units, 'unit')} · ${countsText(counts)}`;

/** `1 blocker accepted by Ona Reeve.`; undefined when there was none to accept. */
export function acceptedText({ accepted }: RigRevisionSummary): string | undefined {
  if (accepted.length === 0) return undefined;
  return `${countedSeverity(accepted.length, 'blocker')} accepted by ${listed([...new Set(accepted.map(({ by }) => by))])}.`;
}

/** A revision where one of several is chosen. */
export const revisionChoice = ({ number, note, at }: RigRevisionSummary): string =>
  [`Revision ${number}`, sayDay(at), note].filter((part) => part !== '').join(' · ');

const WAYS: Readonly<Record<Provenance['way'], string>> = {
  started: 'Started from',
  handover: 'Taken over as',
  file: 'Brought in from a file of',
};

/** `Started from house rig “House” of The Kettle, revision 3, by crew Lampwrights, on 30 November 2026.` */
export function provenanceSentence({ way, rigKind, rigName, venueName, number, crewName, at }: Provenance): string {
  const venue = venueName === null ? '' : ` of ${venueName}`;
  return `${WAYS[way]} ${RIG_KIND_WORDS[rigKind]} “${rigName}”${venue}, revision ${number}, by crew ${crewName}, on ${sayDay(at)}.`;
}

/** The same in the line under a rig's name: `from “House”, revision 3`. */
export const provenanceShort = ({ rigName, number }: Provenance): string => `from “${rigName}”, revision ${number}`;

/** Where a unit came from, when its rig began as a revision of another. */
export const ORIGIN_WORDS = {
  title: 'Where it came from',
} as const;

/** What became of a unit since its rig began: `undefined` fields when it was not in that revision. */
export function originSentence({ rigKind, number }: Provenance, fields: readonly Field[] | undefined): string {
  const rig = `the ${RIG_KIND_WORDS[rigKind]} (revision ${number})`;
  if (fields === undefined) return `Not in ${rig}: added for this one.`;
  if (fields.length === 0) return `As ${rig} has it.`;
  return `Came from ${rig}, changed since: ${listed(fields.map((field) => FIELD_WORDS[field]))}.`;
}
