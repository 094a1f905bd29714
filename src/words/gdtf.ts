import { unreachable } from '#base/unreachable.ts';
import type { GdtfRefusal } from '#engine/type/file-refusal.ts';
import type { Defect, Guess, LeftOut } from '#engine/type/gdtf-report.ts';
import type { TypeTrouble } from '#engine/type/type-troubles.ts';
import { HAZARD_NAMES, typeTroubleSentence } from './fixture-types.ts';
import { counted } from './screens.ts';

/** Why a GDTF file was not taken: what happened, where, and what to do next. Nothing was changed by it. */
export function gdtfRefusalSentence(refusal: GdtfRefusal): string {
  switch (refusal.code) {
    case 'archive-empty':
      return 'The file is empty. Get it again from where it came from.';
    case 'archive-too-large':
      return `The file is ${megabytes(refusal.bytes)}, and at most ${megabytes(refusal.limit)} are taken. Take pictures and models out of it.`;
    case 'archive-nested':
      return `The file sits in archives more than ${refusal.limit} deep. Unpack it first, then bring in the file itself.`;
    case 'not-an-archive':
      return 'The file is not a GDTF file: that is a zip archive, and this is none. Check that you chose the right file.';
    case 'archive-truncated':
      return 'The end of the file is missing. It was probably not downloaded to the end: get it again.';
    case 'archive-damaged':
      return refusal.entry === null
        ? 'The file’s list of contents is damaged. Get it again from where it came from.'
        : `“${refusal.entry}” in the file is damaged. Get the file again from where it came from.`;
    case 'too-many-entries':
      return `The file holds ${refusal.entries} files, and at most ${refusal.limit} are taken. Take pictures and models out of it.`;
    case 'path-outside':
      return `The file wants to write outside its own folder (“${refusal.entry}”). Do not use it; get it from a source you trust.`;
    case 'named-twice':
      return `The file holds “${refusal.entry}” twice, so nobody can tell which one counts. Get it again from its maker.`;
    case 'encrypted':
      return `“${refusal.entry}” in the file is locked with a password. Ask its maker for one without.`;
    case 'compression-method':
      return `“${refusal.entry}” in the file is packed with ${refusal.method}, which GDTF does not provide for. Unpack it and zip it again.`;
    case 'entry-too-large':
      return `“${refusal.entry}” in the file unpacks to more than ${megabytes(refusal.limit)}. No fixture type needs that much: do not use it.`;
    case 'total-too-large':
      return `The file unpacks to more than ${megabytes(refusal.limit)} altogether. No fixture type needs that much: do not use it.`;
    case 'size-untrue':
      return `“${refusal.entry}” in the file is not the ${refusal.said} bytes it says it is. Do not use it; get it from a source you trust.`;
    case 'xml-broken':
      return `The file’s description is broken in line ${refusal.line} (${refusal.what}). Ask its maker for a whole one.`;
    case 'xml-doctype':
      return `The file’s description declares a document type in line ${refusal.line}, which GDTF does not have and which can be used to attack. Do not use it.`;
    case 'xml-too-deep':
      return `The file’s description is nested more than ${refusal.limit} deep in line ${refusal.line}. No fixture type needs that: do not use it.`;
    case 'xml-too-many':
      return `The file’s description has more than ${refusal.limit} elements, counted up to line ${refusal.line}. Take modes that nobody uses out of it.`;
    case 'no-description':
      return 'The archive has no “description.xml”, so it is no GDTF file. Check that you chose the right file.';
    case 'not-gdtf':
      return `The file’s description is not one of a fixture type (it begins with “${refusal.root}”). Check that you chose the right file.`;
    case 'no-usable-mode':
      return `${unusable(refusal.modes, refusal.trouble)} Ask its maker for a whole one, or write the type from the manual. Nothing was put into the library.`;
    default:
      return unreachable(refusal);
  }
}

function unusable(modes: number, trouble: TypeTrouble | null): string {
  if (trouble === null) return 'The file has no mode, so there is nothing to patch.';
  const which = modes === 1 ? 'The file’s only mode cannot be used.' : `None of the file’s ${modes} modes can be used.`;
  return `${which} ${typeTroubleSentence(trouble)}`;
}

const megabytes = (bytes: number) => `${Math.ceil(bytes / 1_000_000)} MB`;

/** What each defect means, and what was done about it. */
const DEFECTS: Readonly<Record<Defect['code'], (what: string) => string>> = {
  'not-at-root': (what) =>
    `the description stands in a folder (“${what}”) instead of at the top. It was read from there`,
  encoding: (what) => `the description is written in ${what}, not UTF-8. Check names with accents`,
  version: (what) =>
    what === '' ? 'the file names no version' : `version “${what}” is not known here. It was read all the same`,
  'no-name': () => 'the type has no name',
  guid: (what) => `“${what}” is no identity of a type. It was left out`,
  'part-unnamed': (what) => `a part (${what}) has no name`,
  'part-named-twice': (what) => `the part “${what}” stands there twice. The later one was renamed`,
  'part-within': (what) =>
    `the part “${what}” is used as a whole of its own but stands within another. It was read all the same`,
  'mode-named-twice': (what) => `the mode “${what}” stands there twice. The later one was renamed`,
  'mode-root': (what) => `the mode starts from the part “${what}”, which is not there. The first part was taken`,
  'copy-of-nothing': (what) => `cells repeat the part “${what}”, which is not there. They take no slots`,
  'channel-part': (what) => `a channel belongs to the part “${what}”, which is not there. It takes no slots`,
  'channel-empty': (what) => `a channel of “${what}” does not say what it does`,
  offset: (what) => `“${what}” is no slot. It was left out`,
  break: (what) => `“${what}” is no break. Break 1 was taken`,
  value: (what) => `${what} is no DMX value. It was left out`,
  'value-too-high': (what) => `${what} is more than its bytes hold. The highest value was taken`,
  number: (what) => `${what} is no number. It was left out`,
  link: (what) => `${what} points at nothing. It was left out`,
  'notes-file': (what) => `“${what}” cannot be read. Settings and cautions it may hold were left out`,
};

/** One defect as a sentence with its line. */
export const defectSentence = ({ code, line, what }: Defect): string => `Line ${line}: ${DEFECTS[code](what)}.`;

/** One guess as a sentence: all of them are for a person to confirm with the manual. */
export function guessSentence(guess: Guess): string {
  switch (guess.kind) {
    case 'named-by-file':
      return `Called “${guess.name}” after the file, as the type in it has no name.`;
    case 'laser':
      return 'It has a laser; its class is not stated. Look it up in the manual.';
    case 'hazard':
      return `Taken to have ${HAZARD_NAMES[guess.hazard]}, because of “${guess.from}”.`;
    case 'not-stated':
      return `A ${guess.figure} of 0 was taken as not stated.`;
    case 'power':
      return guess.from === 'consumers'
        ? `Power (${guess.watts} W) is the sum of what its parts are said to draw. Check it with the manual.`
        : `The file states power more than once; the largest (${guess.watts} W) was taken. Check it with the manual.`;
    case 'old-offsets':
      return `Slots of ${counted(guess.channels, 'channel')} are spelled as versions before 1.1 do.`;
    case 'old-defaults':
      return `Default values of ${counted(guess.channels, 'channel')} are spelled as versions before 1.1 do.`;
    default:
      return unreachable(guess);
  }
}

/** What each kind of thing that was left is called. */
export const LEFT_WORDS: Readonly<Record<LeftOut['what'], string>> = {
  wheels: 'wheels',
  emitters: 'emitters',
  filters: 'filters',
  models: 'models of parts',
  relations: 'relations between channels',
  macros: 'macros',
  revisions: 'notes on revisions',
  presets: 'presets',
  protocols: 'other protocols',
  wiring: 'wiring',
  files: 'pictures and other files',
};
