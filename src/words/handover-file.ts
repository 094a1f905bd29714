import { unreachable } from '#base/unreachable.ts';
import type { HandoverAbout } from '#engine/handover/handover-about.ts';
import type { HandoverRefusal } from '#engine/handover/handover-refusal.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Rig } from '#engine/model/rig.ts';
import { findingSentence } from './findings.ts';
import { CAUTION_FOOT } from './fixture-types.ts';
import { handoverLines } from './handover-lines.ts';
import { counted, PRODUCT, RIG_KIND_WORDS, SEVERITY_WORDS } from './screens.ts';

/** Findings that are written out; the rest are counted. */
const WRITTEN = 1000;

/** The handover in plain words, for a person with nothing but a text editor. */
export function handoverReadMe(about: HandoverAbout, rig: Rig, findings: readonly Finding[]): string {
  const { hazards, faults, hires, notes } = handoverLines(rig);
  const found = findings
    .slice(0, WRITTEN)
    .map((finding) => `${SEVERITY_WORDS[finding.severity].one}: ${findingSentence(finding, rig)}`);
  const rest = findings.length - found.length;
  const parts = [
    part('What the giver says', about.words === '' ? [] : [about.words], 'Nothing.'),
    part('What the check found', rest > 0 ? [...found, `… and ${rest} more in findings.json`] : found, 'Nothing.'),
    part('What can hurt, and who answers for it', hazards, 'No type of this rig is known to have a hazard.'),
    part('Open faults', faults, 'None known.'),
    part('Hired in, due back', hires, 'Nothing.'),
    part('Notes', notes, 'None.'),
  ];
  return `${[...head(about), '', ...parts.flat(), ...foot()].join('\n')}\n`;
}

function head({ from, rig, revision, writtenAt }: HandoverAbout): readonly string[] {
  const where = rig.venueName === null ? '' : `, ${rig.venueName}`;
  return [
    `Handover of “${rig.name}” (${RIG_KIND_WORDS[rig.kind]}${where}), revision ${revision.number}`,
    `From ${from.crewName}, written by ${from.by} on ${minute(writtenAt)} UTC`,
    `Frozen by ${revision.by} on ${minute(revision.at)} UTC${revision.note === '' ? '' : `: ${revision.note}`}`,
    `${counted(revision.units, 'unit')}; SHA-256 of rig.json: ${revision.hash}`,
  ];
}

const foot = (): readonly string[] => [
  CAUTION_FOOT,
  '',
  'What is in this archive',
  '  read-me.txt    these words',
  '  patch.csv      every unit with all its cells, for any spreadsheet',
  '  rig.json       the whole frozen rig',
  '  findings.json  what the check found, as data',
  '  manifest.json  what this file says of itself, with the SHA-256 of each part',
  '  seal.txt       the SHA-256 of manifest.json',
  '',
  `To take it in, open ${PRODUCT}, go to the page of your crew, and choose “Bring in a handover file”.`,
];

const part = (title: string, lines: readonly string[], none: string): readonly string[] => [
  title,
  ...(lines.length === 0 ? [none] : lines).map((line) => `  ${line.replaceAll('\n', '\n  ')}`),
  '',
];

const minute = (iso: string) => iso.slice(0, 16).replace('T', ' ');

/** Why a handover file was not taken: what happened, where, and what to do next. Nothing was changed by it. */
export function handoverRefusalSentence(refusal: HandoverRefusal): string {
  switch (refusal.code) {
    case 'archive-empty':
    case 'archive-truncated':
      return 'The file is not whole: its end is missing. Get it again from whoever sent it.';
    case 'not-an-archive':
    case 'not-a-handover':
      return `This is no handover file of ${PRODUCT}. Check that you chose the right file; its name ends in “.handover.zip”.`;
    case 'newer-format':
      return `This file was written by a newer ${PRODUCT} (its format is ${refusal.format}). Ask whoever looks after this installation to bring it up to date.`;
    case 'part-missing':
      return `“${refusal.part}” is missing from the file. Nothing was taken: ask for the file again.`;
    case 'part-changed':
      return `“${refusal.part}” was changed after the file was written. Nothing was taken: ask for the file again.`;
    case 'rig-unreadable':
      return refusal.newer
        ? `The rig in this file was written by a newer ${PRODUCT}. Ask whoever looks after this installation to bring it up to date.`
        : 'The rig in this file cannot be read whole. Nothing was taken: ask for the file again.';
    case 'archive-damaged':
      return refusal.entry === null
        ? 'The file’s list of contents is damaged. Get it again from whoever sent it.'
        : `“${refusal.entry}” in the file is damaged. Get the file again from whoever sent it.`;
    case 'path-outside':
      return `The file wants to write outside its own folder (“${refusal.entry}”). Do not use it.`;
    case 'named-twice':
      return `The file holds “${refusal.entry}” twice, so nobody can tell which one counts. Ask for the file again.`;
    case 'encrypted':
    case 'compression-method':
    case 'size-untrue':
      return `“${refusal.entry}” in the file was not packed by ${PRODUCT}. Do not use it; ask for the file as it was written.`;
    case 'archive-too-large':
    case 'archive-nested':
    case 'too-many-entries':
    case 'total-too-large':
    case 'too-much':
      return 'The file is larger than any handover. Do not use it; ask for the file as it was written.';
    case 'entry-too-large':
      return `“${refusal.entry}” in the file is larger than in any handover. Do not use it; ask for the file as it was written.`;
    default:
      return unreachable(refusal);
  }
}
