import type { Balance } from '#engine/supply/balance/balance-plan.ts';
import type { CircuitLoad } from '#engine/supply/circuit-loads.ts';
import { exceeds, type VenueRules } from '#engine/supply/load-rules.ts';
import type { PositionLoad } from '#engine/supply/position-loads.ts';
import type { SupplyLoad } from '#engine/supply/supply-loads.ts';
import { speaksOf } from '#engine/supply/units-load.ts';
import { ampsText, kilogramsText, percentText, voltAmpsText, voltsText, wattsText } from './amounts.ts';
import { CARD_CHOICE_WORDS } from './cards.ts';
import { ruleText } from './loads.ts';
import { counted } from './screens.ts';
import { limitText } from './supply-findings.ts';

/** The page of supplies, circuits and weights. */
export const SUPPLY_WORDS = {
  title: 'Supply',
  none: 'Nothing is fed here yet. Add a supply, or name circuits in the sheet.',
  setup: 'By which rules',
  volts: 'Nominal voltage',
  voltsPlaceholder: (volts: number) => `${volts}, until said`,
  share: 'Loads of three hours or more may take',
  shares: { all: 'all of a breaker’s rating', most: '80 % of a breaker’s rating' },
  shareOther: (share: number) => `${percentText(share)} of a breaker’s rating`,
  shareOdd: (text: string) => `“${text}”, which is no share`,
  rules: 'What these rules are called',
  rulesPlaceholder: 'as the venue names them',
  choose: 'The venue says which rules hold. They are never taken from where somebody is.',
  supplies: 'Supplies',
  loose: 'Circuits on no supply',
  noCircuit: 'On no circuit',
  positions: 'Weight by position',
  line: (at: number, lines: number) => (lines === 1 ? 'Line' : `Line ${at}`),
  neutral: 'Neutral',
  cells: {
    phases: 'Phases',
    volts: 'Volts to neutral',
    rating: 'Amps a line',
    third: 'Third harmonic, 0 to 1',
    notes: 'Notes',
    breakerAmps: 'Amps of the breaker',
    breaker: 'Breaker',
    supply: 'Supply',
    phase: 'Phase',
    kilograms: 'Limit in kg',
    extra: 'Other load in kg',
    person: 'Stated by',
    on: 'On',
  },
  linear: 'linear loads',
  cellOf: (cell: string, name: string) => `${cell} of ${name}`,
  addSupply: 'Add a supply',
  addCircuit: 'Add a circuit',
  addLimit: 'Say what a position may hold',
  nameOf: { supply: 'Name of the supply', circuit: 'Name of the circuit', limit: 'Position' },
  addWord: 'Add',
  describe: 'describe it',
  describeName: (circuit: string) => `Describe circuit ${circuit}`,
  limitName: (position: string) => `Say what ${position} may hold`,
  sayLimit: 'say what it may hold',
  noWeight: 'The limit is a weight in kg, more than 0. Write a number.',
  limitHints: {
    kilograms: 'As the venue or its rigger states it.',
    person: 'Who answers for it, by name.',
    on: 'The day they said so, as in 2026-11-25.',
  },
  rename: 'Rename…',
  renameWord: 'Rename',
  removeWord: 'Remove it',
  renameName: (name: string) => `Rename ${name}`,
  renameTitle: (name: string) => `Another name for “${name}”`,
  renameHint: { supply: 'Its circuits go with it.', circuit: 'The units on it go with it.' },
  remove: 'Remove…',
  removeName: (name: string) => `Remove ${name}`,
  removeTitle: (name: string) => `Remove “${name}”?`,
  removeAbout: {
    supply: 'Its circuits go on naming it, so that they can be found. It can be undone.',
    circuit: 'Its units go on naming it; what feeds it and its rating are forgotten. It can be undone.',
    limit: 'The units there stay; what the position may hold is forgotten. It can be undone.',
  },
  balance: 'Balance the lines',
  undo: (plan: string) => `Undo: ${plan.toLowerCase()}`,
  more: (units: number) => `${units.toLocaleString('en-GB')} more`,
  showAll: (all: number) => `Show all ${all.toLocaleString('en-GB')}`,
  noUnits: 'no unit on it yet',
  nothingHangs: 'no unit there yet',
  chosen: (units: number) => `${counted(units, 'unit')} chosen`,
  chosenName: 'Chosen units',
  clear: 'Choose none',
  toSheet: 'See it in the sheet',
  putOn: 'Circuit to put them on',
  put: 'Put them on it',
  takeOff: 'Take them off their circuits',
  asks: (amps: number) => `asks for a breaker of at least ${ampsText(amps)}`,
  noPosition: 'At no position',
} as const;

/** `three phases, 398 V between lines, 230 V to neutral, 63 A a line`. */
export function supplyAbout({ supply, volts }: SupplyLoad): string {
  const rating = supply.rating === null ? 'rating not said' : `${ampsText(supply.rating)} a line`;
  const phases = supply.phases === 1 ? 'one phase' : `three phases, ${voltsText(volts * Math.sqrt(3))} between lines`;
  return `${phases}, ${voltsText(volts)} to neutral, ${rating}`;
}

/** What a supply carries in all, and what that leaves out. */
export const supplyTotal = ({ watts, voltAmps, circuits }: SupplyLoad): string =>
  `${counted(circuits.length, 'circuit')} · ${wattsText(watts)} · ${voltAmpsText(voltAmps)}`;

/** `6.4 A of 16 A · 40 %`; over its limit says by how much. */
export function barText(
  held: number,
  limit: number | null,
  unit: 'amps' | 'kilograms',
  known: 'all' | 'least',
): string {
  const say = unit === 'amps' ? ampsText : kilogramsText;
  const figure = `${known === 'all' ? '' : 'at least '}${say(held)}`;
  if (limit === null) return figure;
  const over = exceeds(held, limit) ? ` · ${say(held - limit)} over` : '';
  return `${figure} of ${say(limit)} · ${percentText(held / limit)}${over}`;
}

/** What holds beside a circuit's bar: `12.8 A for hours: 80 % of a breaker’s rating, by house rules`. */
export const usableText = (usable: number, rules: VenueRules): string =>
  `${ampsText(usable)} for hours: ${ruleText(rules)}`;

/** What is not known of a circuit, and what manuals say of its breaker, one sentence each. */
export function circuitRemarks(load: CircuitLoad): readonly string[] {
  const { unknown, factorless } = load;
  return [
    ...(unknown.length === 0
      ? []
      : [`${counted(unknown.length, 'unit')} of unknown power ${unknown.length === 1 ? 'is' : 'are'} in no figure.`]),
    ...(factorless.length === 0
      ? []
      : [`${counted(factorless.length, 'unit')} without a power factor, reckoned with 1: they may draw more.`]),
    ...breakerRemarks(load),
  ];
}

function breakerRemarks({ limits, card, volts }: CircuitLoad): readonly string[] {
  const circuit = { breaker: card?.breaker ?? '', rating: card?.rating ?? null, volts };
  return limits
    .filter((limit) => speaksOf(limit, circuit) !== 'another')
    .map(
      ({ type, units, breaker, most }) =>
        `${type}, ${units.length} here: on ${breaker.trim() === '' ? 'one breaker' : breaker} at most ${most}, says its manual.`,
    );
}

/** `460 W · 484 VA at 230 V`. */
export const circuitFigures = ({ watts, voltAmps, volts }: CircuitLoad): string =>
  `${wattsText(watts)} · ${voltAmpsText(voltAmps)} at ${voltsText(volts)}`;

/** By whose word a position may hold how much, and what counts in. */
export function positionText({ limit, kilograms, units }: PositionLoad): string {
  if (limit === undefined) return counted(units.length, 'unit');
  const extra = limit.extra === 0 ? '' : ` with ${kilogramsText(limit.extra)} of other load`;
  return `${counted(units.length, 'unit')}, ${kilogramsText(kilograms)}${extra}; ${limitText({ ...limit, limit: limit.kilograms })}`;
}

export const positionRemark = ({ unknown }: PositionLoad): string | undefined =>
  unknown.length === 0
    ? undefined
    : `${counted(unknown.length, 'unit')} of unknown weight ${unknown.length === 1 ? 'is' : 'are'} in no figure.`;

/** What a balance says of itself. */
export function balanceSentences({ moves, after, bound, fewest, unknown }: Balance): readonly string[] {
  const peak = Math.max(...after);
  const least =
    peak <= bound * 1.0005
      ? 'No way of laying them has a smaller largest line.'
      : `It is proven that the largest line cannot come below ${ampsText(bound)}; this is ${ampsText(peak - bound)} above.`;
  const few =
    moves.length <= fewest
      ? 'Fewer circuits would not do.'
      : `At least ${counted(fewest, 'circuit')} must move for that.`;
  return [
    `${counted(moves.length, 'circuit')} ${moves.length === 1 ? 'moves' : 'move'}; each counts 1. ${few}`,
    least,
    'Circuits between two lines stay where they are.',
    ...(unknown.length === 0 ? [] : [`Not known in full: the load of ${unknown.join(', ')}.`]),
    'A licensed electrician moves circuits, with the supply off.',
  ];
}

export const BALANCE_WORDS = {
  title: (supply: string) => `Balance the lines of “${supply}”`,
  caption: 'Lines before and after',
  line: 'Line',
  before: 'Before',
  after: 'After',
  circuits: 'Circuits that move',
  circuit: 'Circuit',
  from: 'From',
  to: 'To',
  load: 'Load',
  phase: (phase: string | null) => (phase === null ? 'no phase' : `phase ${CARD_CHOICE_WORDS[phase] ?? phase}`),
} as const;
