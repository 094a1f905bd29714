import type { Fixture } from '#engine/model/fixture.ts';
import { plantOf } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { LoadStanding } from '#engine/sheet/sheet.ts';
import { type LoadRules, rulesOf, type VenueRules } from '#engine/supply/load-rules.ts';
import { percentText, voltsText } from './amounts.ts';
import { unitName } from './findings.ts';
import { counted } from './screens.ts';

/** The usual cautions of loads and weights (common practice); the last of each says who has the last word. */
export const CIRCUIT_CAUTIONS: readonly string[] = [
  'Loads are planning aids, reckoned from what the manuals of the types state. Switching on draws far more for a moment, and what is not in this list draws as well.',
  'Local codes say what a circuit may carry and how long; a licensed electrician has the last word.',
];

export const POSITION_CAUTIONS: readonly string[] = [
  'Weights are of the units alone, as the manuals of their types state them: without clamps, cable, accessories and what they hang from. This is no structural calculation.',
  'The limits the venue states hold; a competent rigger has the last word.',
];

/** `all of a breaker’s rating`. */
const shareText = ({ share }: LoadRules): string =>
  share === null ? 'all of a breaker’s rating' : `${percentText(share)} of a breaker’s rating`;

/** The same with what the rules are called: `80 % of a breaker’s rating, by house rules`. */
export const ruleText = (rules: VenueRules): string =>
  rules.name === '' ? shareText(rules) : `${shareText(rules)}, by ${rules.name}`;

/** Names in one cell: spreadsheets cut what is longer than some 32,000 characters. */
const MOST_NAMES = 200;

function unitNames(fixtures: readonly Fixture[]): string {
  const names = fixtures.slice(0, MOST_NAMES).map(unitName).join(', ');
  return fixtures.length > MOST_NAMES ? `${names}, ${moreWord(fixtures.length - MOST_NAMES)}` : names;
}

const moreWord = (count: number) => `and ${count.toLocaleString('en-GB')} more`;

/** By which rules loads are reckoned, as a sentence. */
export const reckonedText = (rules: VenueRules): string =>
  `Reckoned at ${voltsText(rules.volts)}${rules.voltage === 'said' ? '' : ', which nobody has said yet'}, loads of three hours or more taking ${ruleText(rules)}.`;

/** What a sheet says of loads: by the rules that the crew of the rig chose. */
export function loadStanding(rig: Rig): LoadStanding {
  const rules = rulesOf(plantOf(rig.cards));
  return {
    rule: ruleText(rules),
    units: unitNames,
    circuitCautions: [
      `${reckonedText(rules)} Supplies with a voltage of their own, and circuits between two lines, at theirs. Where other rules hold, choose them on the page of the supply.`,
      ...CIRCUIT_CAUTIONS,
    ],
    positionCautions: POSITION_CAUTIONS,
  };
}

/** What feeds the selected units and what else hangs where they do, beside the sheet. */
export const LOADS_WORDS = {
  title: 'Loads',
  about: (units: number) => `What feeds ${counted(units, 'selected unit')}, and what hangs where they do.`,
  circuits: 'Circuits',
  noCircuit: 'No circuit given',
  positions: 'Positions',
  noPosition: 'No position given',
  circuit: 'Put the selected units on circuit',
  put: 'Look at it',
  toPage: 'All supplies, circuits and limits',
  more: moreWord,
  none: 'No unit is selected.',
} as const;
