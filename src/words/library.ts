import { unreachable } from '#base/unreachable.ts';
import type { FactField } from '#engine/draft/draft.ts';
import { HAZARD_KINDS, type Hazards } from '#engine/model/fixture-type.ts';
import type { FactChange } from '#engine/type/compare-types.ts';
import type { GdtfReport, LeftOut } from '#engine/type/gdtf-report.ts';
import type { FileTaken, ModeSummary, NamedDraft, TypeOrigin, TypeSummary, WhereUsed } from '#wire/library.ts';
import { footprintWords, HAZARD_NAMES } from './fixture-types.ts';
import { LEFT_WORDS } from './gdtf.ts';
import { counted } from './screens.ts';

export const LIBRARY_WORDS = {
  title: 'Fixture types',
  crewAbout: 'What the units of this crew’s rigs are, slot by slot.',
  link: 'fixture types',
  open: 'Open the library',
  of: (crew: string) => `library of ${crew}`,
  reader: 'You are a reader in this crew: you can look at types and save them as files, not change them.',
  search: 'Find a type',
  searchHint: 'Maker, model, mode, or slots: “wash”, “16 slots”. ↑ ↓ choose, Enter opens.',
  list: 'Types',
  found: (found: number, all: number) => (found === all ? counted(all, 'type') : `${found} of ${counted(all, 'type')}`),
  nothingFound: (query: string) =>
    `Nothing is called “${query}”. Try fewer words, or bring the type in from a GDTF file.`,
  empty: 'No types yet. Bring in GDTF files, or write a new type from its manual.',
  maker: 'Maker',
  model: 'Model',
  modes: 'Modes',
  hazards: 'Hazards',
  revision: 'Revision',
  builtIn: 'built in',
  noModes: 'no modes',
  newType: 'Write a new type',
  drafts: 'Being written',
  unnamedDraft: 'A new type, without a name yet',
  begun: (by: string, when: string) => `begun by ${by}, ${when}`,
} as const;

/** `r3`; a built-in type has no revisions. */
export const revisionWord = ({ number, origin }: { readonly number: number; readonly origin: TypeOrigin }): string =>
  origin === 'built-in' ? LIBRARY_WORDS.builtIn : `r${number}`;

/** What a draft is called so far. */
export const draftName = ({ maker, model }: Pick<NamedDraft, 'maker' | 'model'>): string =>
  `${maker} ${model}`.trim() || LIBRARY_WORDS.unnamedDraft;

/** What can hurt, in a few words: `laser class 3B`, `moving parts`. */
export function hazardWords(hazards: Hazards): readonly string[] {
  const kinds = HAZARD_KINDS.filter((kind) => hazards[kind]).map((kind) => HAZARD_NAMES[kind]);
  if (hazards.laser === null) return kinds;
  return [hazards.laser === 'unknown' ? 'laser, class not stated' : `laser class ${hazards.laser}`, ...kinds];
}

/** `Basic (12 slots)`: a mode with its slots, as short as can be. */
export const modeWord = ({ name, footprints }: ModeSummary): string => `${name} (${footprintWords(footprints)})`;

export const UPLOAD_WORDS = {
  choose: 'Bring in GDTF files',
  drop: 'or drop them here',
  report: 'What became of the files',
  clear: 'Put these reports away',
  waiting: 'waits for the files before it',
  sending: 'is being read…',
  sent: (done: number, all: number) =>
    done === all ? `${counted(all, 'file')} done.` : `${done} of ${all} files done.`,
  unreadable: 'This device cannot read the file. Check that it is there, and is no folder.',
  wrong: 'Wrong in the file, and read around',
  troubles: 'To check with the manual',
  guessed: 'Guessed: please confirm',
  left: 'Left out: there is no place for it here',
  more: (count: number) => `and ${counted(count, 'more defect')}.`,
  openType: 'Look at it',
} as const;

/** What became of a file that was taken. */
export function takenSentence({ outcome, type, number }: FileTaken): string {
  const name = `${type.maker} ${type.model}`.trim();
  switch (outcome) {
    case 'new':
      return `${name} is in the library now.`;
    case 'revision':
      return `${name} is in the library as revision ${number}. Rigs keep the revision they have until somebody takes the new one.`;
    case 'same':
      return `${name} was in the library already, exactly so, as revision ${number}. Nothing changed.`;
    default:
      return unreachable(outcome);
  }
}

/** What of a file was read. */
export function readSentence({ version, read }: GdtfReport): string {
  const from = version === '' ? 'without a version' : `version ${version}`;
  return `GDTF ${from}: ${counted(read.modes, 'mode')}, ${counted(read.channels, 'channel')}, ${counted(read.parts, 'part')} read.`;
}

export const leftText = (left: readonly LeftOut[]): string =>
  left.map(({ what, count }) => `${LEFT_WORDS[what]} (${count})`).join(', ');

export const TYPE_WORDS = {
  loading: 'Fixture type',
  of: ({ revision, origin }: Pick<TypeSummary, 'revision' | 'origin'>) =>
    origin === 'built-in' ? LIBRARY_WORDS.builtIn : `revision ${revision}`,
  library: 'All types',
  change: 'Change it',
  changeBuiltIn: 'Write a type of your own from it',
  builtInAbout: 'It comes with the program and stays as it is.',
  save: 'Save as GDTF',
  saveRevision: (number: number) => `Save revision ${number} as GDTF`,
  remove: 'Take it out of the library',
  removeTitle: (name: string) => `Take ${name} out of the library?`,
  removeAbout:
    'Nobody in this crew can put it into a rig any more. Rigs that use it keep their copy, and nothing changes there.',
  removeSubmit: 'Take it out',
  facts: 'As its manual states it',
  noFacts: 'Nothing is stated beyond its name.',
  planning: 'Planning figures: the maker’s instructions and the plate on the unit have the last word.',
  hazards: 'Cautions',
  modes: 'Modes',
  modesNav: 'Modes of this type',
  firmware: (versions: readonly string[]) => `firmware ${versions.join(', ')}`,
  allFirmware: 'in every firmware',
  virtual: (count: number) => `${counted(count, 'virtual channel')} without slots`,
  revisions: 'Revisions',
  revision: 'Revision',
  when: 'When',
  who: 'Who',
  note: 'Note',
  file: 'File',
  saveShort: 'Save',
  origins: { file: 'from a file', draft: 'written here', 'built-in': 'built in' } satisfies Record<TypeOrigin, string>,
  drafts: 'Being written',
  draft: (by: string, when: string, base: number | null) =>
    base === null ? `New, begun by ${by} on ${when}` : `Begun by ${by} on ${when}, from revision ${base}`,
  openDraft: 'Open the draft',
  usedIn: 'Where it is used',
  unitsIn: (mode: string, units: number) => `${mode}: ${counted(units, 'unit')}`,
  pinnedRevision: (number: number) => `revision ${number}`,
  fileReport: 'What its file was read as',
} as const;

export const COMPARE_WORDS = {
  title: 'Compare two revisions',
  before: 'Before',
  after: 'After',
  choice: (number: number, when: string) => `Revision ${number}, ${when}`,
  same: 'Choose two different revisions.',
  equal: 'Both revisions say the same.',
  unseen:
    'They differ only where no slot chart shows it: in parts, the identity in its file, virtual channels, or how channels snap and follow masters.',
  added: (name: string, slots: string) => `Mode “${name}” is new: ${slots}.`,
  removed: (name: string, slots: string) => `Mode “${name}” is gone. It had ${slots}.`,
  changed: (name: string, slots: number) =>
    slots === 0 ? `Mode “${name}”: the same slots` : `Mode “${name}”: ${counted(slots, 'slot')} changed`,
  description: 'Description',
  firmware: 'Firmware',
  slot: 'Slot',
  break: 'Break',
  none: 'no such slot',
  nothing: 'not stated',
} as const;

export const FACT_WORDS: Readonly<Record<FactField, string>> = {
  maker: 'Maker',
  model: 'Model',
  shortName: 'Short name',
  description: 'Description',
  weight: 'Weight',
  power: 'Power',
  powerFactor: 'Power factor',
  voltage: 'Voltage',
  connector: 'Power connector',
  perBreaker: 'Most on one breaker',
  switches: 'Address switches',
  onLoss: 'When data stops',
  laser: 'Laser class',
  strobe: 'Flashing light',
  ultraviolet: 'Ultraviolet light',
  movingParts: 'Moving parts',
  fog: 'Fog or haze',
  heat: 'Hot surfaces',
};

const UNITS: Partial<Readonly<Record<FactField, string>>> = { weight: 'kg', power: 'W', voltage: 'V' };
const SWITCHES: Readonly<Record<string, string>> = { A: 'hold the address', B: 'hold the address less 1' };

/** How far the look at a crew's rigs for uses of a type went, and that there was none. */
export function lookedSentence({ uses, looked, rigs }: WhereUsed): string {
  const all = looked === rigs;
  if (rigs === 0) return 'The crew has no rigs yet.';
  if (all) return uses.length === 0 ? 'No rig of the crew uses it.' : 'All rigs of the crew were looked at.';
  const part = `Only the ${looked.toLocaleString('en-GB')} rigs that changed last, of ${counted(rigs, 'rig')}, were looked at`;
  return uses.length === 0 ? `${part}: none of them uses it.` : `${part}.`;
}

/** A fact with its unit; what is empty is not stated. */
export function factText(fact: FactField, value: string): string {
  if (value === '') return COMPARE_WORDS.nothing;
  if (fact === 'switches') return SWITCHES[value] ?? value;
  const unit = UNITS[fact];
  return unit === undefined ? value : `${value} ${unit}`;
}

/** `Weight: 12 kg, before not stated`. */
export const factChangeSentence = ({ fact, before, after }: FactChange): string =>
  `${FACT_WORDS[fact]}: ${factText(fact, after)}, before ${factText(fact, before)}.`;

/** The same for a text of a mode. */
export function textChangeSentence(what: string, change: { readonly before: string; readonly after: string }): string {
  const said = (text: string) => (text === '' ? COMPARE_WORDS.nothing : text);
  return `${what}: ${said(change.after)}, before ${said(change.before)}.`;
}
