import type { Fixture } from '#engine/model/fixture.ts';
import type { LoadStanding } from '#engine/sheet/sheet.ts';
import type { LoadRules } from '#engine/supply/load-rules.ts';
import { FIRST_RULES } from '#engine/supply/load-rules.ts';
import { unitName } from './findings.ts';
import { counted } from './screens.ts';

/** The usual cautions of loads and weights (common practice); the last of each says who has the last word. */
const CIRCUIT_CAUTIONS: readonly string[] = [
  'Loads are planning aids, reckoned from what the manuals of the types state. Switching on draws far more for a moment, and what is not in this list draws as well.',
  'Local codes say what a circuit may carry and how long; a licensed electrician has the last word.',
];

const POSITION_CAUTIONS: readonly string[] = [
  'Weights are of the units alone, as the manuals of their types state them: without clamps, cable, accessories and what they hang from. This is no structural calculation.',
  'The limits the venue states hold; a competent rigger has the last word.',
];

/** `all of a breaker’s rating`. */
const shareText = ({ share }: LoadRules): string =>
  share === null ? 'all of a breaker’s rating' : `${Math.round(share * 100)} % of a breaker’s rating`;

/** Names in one cell: spreadsheets cut what is longer than some 32,000 characters. */
const MOST_NAMES = 200;

function unitNames(fixtures: readonly Fixture[]): string {
  const names = fixtures.slice(0, MOST_NAMES).map(unitName).join(', ');
  return fixtures.length > MOST_NAMES ? `${names}, ${moreWord(fixtures.length - MOST_NAMES)}` : names;
}

const moreWord = (count: number) => `and ${count.toLocaleString('en-GB')} more`;

/** What a sheet says of loads: by the rules that hold until a venue has rules of its own. */
export const LOAD_STANDING: LoadStanding = {
  rules: FIRST_RULES,
  rule: shareText(FIRST_RULES),
  units: unitNames,
  circuitCautions: [
    `Reckoned at ${FIRST_RULES.volts} V, loads taking ${shareText(FIRST_RULES)}. Where other rules hold, choose them under Loads beside the sheet.`,
    ...CIRCUIT_CAUTIONS,
  ],
  positionCautions: POSITION_CAUTIONS,
};

const number = (value: number, digits: number) =>
  value.toLocaleString('en-GB', { minimumFractionDigits: digits, maximumFractionDigits: digits });

/** The loads of a rig, beside its sheet. */
export const LOADS_WORDS = {
  title: 'Loads',
  about: 'What each circuit carries and each position holds, as far as the copied types state it.',
  rules: 'By which rules',
  volts: 'Nominal voltage',
  voltsChoice: (volts: number) => `${volts} V`,
  share: 'Loads of three hours or more may take',
  shares: { all: 'all of a breaker’s rating', most: '80 % of a breaker’s rating' },
  kept: 'Kept on this device, for all rigs. The circuit sheet as CSV is reckoned at 230 V, with all of the rating.',
  circuits: 'Circuits',
  noCircuit: 'No circuit given',
  load: (amps: number, watts: number) => `${number(amps, 1)} A · ${number(watts, 0)} W`,
  leastLoad: (amps: number, watts: number) => `at least ${number(amps, 1)} A · ${number(watts, 0)} W`,
  nothingKnown: 'not known',
  rating: (amps: number, rules: LoadRules) =>
    rules.share === null
      ? `at ${rules.volts} V, taking ${shareText(rules)}`
      : `at ${rules.volts} V, taking ${shareText(rules)}: asks for a rating of at least ${number(amps, 1)} A`,
  units: (units: number) => counted(units, 'unit'),
  noBars: 'The bars compare the circuits with each other: nobody has entered what each may carry.',
  unknown: (units: number) => `${counted(units, 'unit')} whose power is not known, not in the figure:`,
  factorless: (units: number) =>
    `${counted(units, 'unit')} without a power factor, reckoned with 1: they may draw more.`,
  unsuited: (units: number, volts: number) =>
    `${counted(units, 'unit')} not made for ${volts} V, by their manuals, so that their figures do not hold:`,
  limit: (type: string, units: number, breaker: string, most: string) =>
    `${type}, ${units} here: on ${breaker === '' ? 'one breaker' : breaker} at most ${most}, says its manual.`,
  positions: 'Weight by position',
  noPosition: 'No position given',
  weight: (kilograms: number) => `${number(kilograms, 1)} kg`,
  leastWeight: (kilograms: number) => `at least ${number(kilograms, 1)} kg`,
  unweighed: (units: number) => `${counted(units, 'unit')} whose weight is not known, not in the figure:`,
  more: moreWord,
  none: 'No unit has been written down yet.',
  circuitCautions: CIRCUIT_CAUTIONS,
  positionCautions: POSITION_CAUTIONS,
} as const;
