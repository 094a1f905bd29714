import type { Rule } from '#engine/model/finding.ts';
import type { SignedHazard } from '#engine/model/fixture-type.ts';
import type { MatchedBy } from '#engine/patch/take-type-plan.ts';
import { SIGNED_HAZARD_NAMES } from './findings.ts';
import { footprintWords } from './fixture-types.ts';
import { counted } from './screens.ts';

/** A type of a rig and the library it was, or can be, copied from. */
export const TAKEN_WORDS = {
  from: (name: string, number: number) => (number === 0 ? `${name}, built in` : `${name}, revision ${number}`),
  notTaken: 'What its slots do is not known here.',
  partly: (modes: number) => `${counted(modes, 'mode')} of it known by slots only.`,
  newer: (number: number) => `The library has revision ${number}:`,
  look: 'see what it changes',
  find: 'find it in the library',
  again: 'take it from the library again',
  new: 'Take a type from the library',
  inLibrary: 'look it up',
} as const;

/** What is offered beside a finding that a panel deals with. */
export const DEAL_WORDS: Partial<Readonly<Record<Rule, string>>> = {
  'no-slots': 'see its type',
  'library-differs': 'see what it changes',
  'firmware-mode': 'see the firmware',
  'firmware-wanted': 'see the firmware',
  'hazard-unsigned': 'name somebody',
  'circuit-over-rating': 'see the load',
  'circuit-over-share': 'see the load',
  'circuit-supply-gone': 'see the load',
  'circuit-phase': 'see the load',
  'circuit-crowded': 'see the load',
  'unit-voltage': 'see the load',
  'circuit-power-unknown': 'see the load',
  'circuit-undescribed': 'see the load',
  'position-over-limit': 'see the weight',
  'position-weight-unknown': 'see the weight',
  'line-over-rating': 'see the load',
  'line-over-share': 'see the load',
  'neutral-over-rating': 'see the load',
  'lines-unbalanced': 'see the load',
  'volts-unsaid': 'see the load',
  'limit-unsigned': 'see the weight',
  'fault-open': 'see its upkeep',
};

export const PICKER_WORDS = {
  title: (type: string | null) => (type === null ? 'Take a type from the library' : `Find “${type}” in the library`),
  search: 'Maker, model, mode or slots',
  nothing: (query: string) => `Nothing is called “${query}”. Try fewer words, or write the type in the library first.`,
  more: (found: number) => `${found} found; type more to see the rest.`,
  back: 'Back to the types',
} as const;

const MATCH_WORDS: Readonly<Record<MatchedBy, string>> = {
  copy: 'copied before',
  name: 'of the same name',
  slots: 'the only one with as many slots',
};

export const TAKE_WORDS = {
  title: (name: string, number: number) => (number === 0 ? `Take ${name}` : `Take ${name}, revision ${number}`),
  loading: 'The library is being asked…',
  which: 'Which mode of the rig is which of the library?',
  inRig: 'In this rig',
  inLibrary: 'In the library',
  because: 'Because',
  matched: (by: MatchedBy | null) => (by === null ? 'choose it' : MATCH_WORDS[by]),
  chosen: 'you chose it',
  leave: 'leave it as it is',
  choose: 'Which modes does the rig need?',
  name: 'What the rig calls it',
  noMode: 'no mode given',
  modeOf: (mode: string, footprints: readonly number[] | null) =>
    `${mode === '' ? 'no mode given' : mode}${footprints === null ? '' : ` (${footprintWords(footprints)})`}`,
  resized: 'Units that take other slots',
  resizedLine: (units: number, mode: string, before: readonly number[], after: readonly number[]) =>
    `${counted(units, 'unit')} set to ${mode}: ${footprintWords(before)} become ${footprintWords(after)}`,
  noneResized: 'Every unit takes the slots it takes now.',
  raised: (count: number) => `It would raise ${counted(count, 'blocker')}:`,
  noneRaised: 'It raises no blocker.',
  moves: (units: number) => `Where they could go, ${counted(units, 'unit')} moved:`,
  left: (count: number) => `No room was found for ${counted(count, 'of them', 'of them')}.`,
  take: 'Take it',
  takeAsIs: 'Take it, move nothing',
  takeAndMove: (units: number) => `Take it and move ${counted(units, 'unit')}`,
  note: 'The rig keeps its own copy: later changes of the library do not reach it by themselves.',
} as const;

export const FIRMWARE_WORDS = {
  title: 'Firmware',
  about:
    'What the units of each type are meant to have, and which do not. What a unit was found with stands in its row, in the column Firmware.',
  wanted: (type: string) => `Firmware wanted of ${type}`,
  wantedHint: 'wanted, such as 1.4 or 2.x',
  units: (units: number) => counted(units, 'unit'),
  others: (units: number) => `${counted(units, 'unit')} with another:`,
  unknown: (units: number) => `${counted(units, 'unit')} nobody has looked at:`,
  lacks: (units: number) => `${counted(units, 'unit')} whose firmware lacks the mode:`,
  right: 'All units that were looked at have it.',
  found: (firmware: string) => (firmware === '' ? 'not looked at' : firmware),
  none: 'No unit has a type yet.',
} as const;

export const HAZARDS_WORDS = {
  title: 'Hazards',
  about:
    'What can hurt in this rig, and who answers for it. Only types taken from the library are known to have hazards.',
  none: 'No type of this rig is known to have a hazard. That is no promise that there is none: look at the units and their manuals.',
  units: (units: number, types: readonly string[]) => `${counted(units, 'unit')}: ${types.join(', ')}`,
  person: (hazard: SignedHazard) => `Who answers for ${SIGNED_HAZARD_NAMES[hazard]}`,
  personHint: 'Name of the person responsible',
  sign: 'They answer for it',
  /** The day stays in one piece. */
  signed: (person: string, on: string) => `${person} answers for it, since ${on.replaceAll('-', '\u2011')}.`,
  renew: 'Types have come since: they have to answer for these too:',
  answerForThese: (person: string) => `${person} answers for these too`,
  takeBack: 'take it back',
  caution: 'No name needed here; mind it all the same.',
} as const;
