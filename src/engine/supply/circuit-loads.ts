import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Physical } from '../model/fixture-type.ts';
import { foldName } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import type { Rig } from '../model/rig.ts';
import { byPlace } from '../sheet/sheet-order.ts';
import { current } from './current.ts';
import { type LoadRules, ratingFor } from './load-rules.ts';

/** What one circuit carries, as far as its units' types state it. Amps of unlike power factors are added up, which is never too little. */
export interface CircuitLoad {
  /** As its units write it; empty for those that name none. */
  readonly circuit: string;
  /** By where they hang. */
  readonly units: readonly Fixture[];
  /** Of the units whose power is known. */
  readonly watts: number;
  readonly amps: number;
  /** The least rating a breaker must have for that by the rules, taking all of it for continuous. */
  readonly rating: number;
  /** Units whose type does not state its power: they are in no figure. */
  readonly unknown: readonly Fixture[];
  /** Units whose type states its power but no power factor: reckoned with 1, so that the amps are the least there are. */
  readonly factorless: readonly Fixture[];
  /** Units whose type states a voltage that the nominal one is not within. */
  readonly unsuited: readonly Fixture[];
  /** What the types' manuals allow on one breaker, for each type that says it. */
  readonly limits: readonly BreakerLimit[];
}

/** What the manual of a type allows on one breaker, in its own words. */
interface BreakerLimit {
  readonly type: string;
  /** Units of that type on the circuit. */
  readonly units: number;
  readonly breaker: string;
  readonly most: string;
}

/** Circuits by their names in natural order, units that name none last. Names are compared folded. [SU6] */
export function circuitLoads(rig: Rig, rules: LoadRules): readonly CircuitLoad[] {
  const circuits = new Map<string, Fixture[]>();
  for (const fixture of byPlace(rig)) {
    const key = foldName(fixture.circuit);
    const units = circuits.get(key);
    if (units === undefined) circuits.set(key, [fixture]);
    else units.push(fixture);
  }
  const rank = (key: string) => (key === '' ? 1 : 0);
  return [...circuits]
    .sort(([a], [b]) => rank(a) - rank(b) || compareNatural(a, b))
    .map(([key, units]) => loadOf(rig, rules, { circuit: key === '' ? '' : nameOf(units), units }));
}

/** Of several ways to write a name the first, whatever the order of rows. */
const nameOf = (units: readonly Fixture[]) =>
  units.map(({ circuit }) => circuit.trim()).reduce((a, b) => (compareNatural(b, a) < 0 ? b : a));

function loadOf(rig: Rig, rules: LoadRules, { circuit, units }: Pick<CircuitLoad, 'circuit' | 'units'>): CircuitLoad {
  const stated = units.map((unit) => statedOf(rig, unit));
  const unitsWhere = (holds: (physical: Physical | undefined) => boolean) =>
    stated.filter(({ physical }) => holds(physical)).map(({ unit }) => unit);
  let watts = 0;
  let amps = 0;
  for (const { physical } of stated) {
    const power = powerOf(physical);
    watts += power ?? 0;
    amps += power === null ? 0 : current({ watts: power, powerFactor: factorOf(physical) ?? 1 }, rules.volts);
  }
  return {
    circuit,
    units,
    watts,
    amps,
    rating: ratingFor(amps, 0, rules),
    unknown: unitsWhere((physical) => powerOf(physical) === null),
    factorless: unitsWhere((physical) => powerOf(physical) !== null && factorOf(physical) === null),
    unsuited: unitsWhere((physical) => !suits(physical, rules.volts)),
    limits: limitsOf(stated),
  };
}

const powerOf = (physical: Physical | undefined): number | null => positive(physical?.power);

function factorOf(physical: Physical | undefined): number | null {
  const factor = positive(physical?.powerFactor);
  return factor !== null && factor <= 1 ? factor : null;
}

/** A figure of a file that cannot be one is as good as none. */
const positive = (value: number | null | undefined): number | null =>
  typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;

/** EN 50160 lets a supply differ from its nominal voltage by a tenth (from memory), and manuals state either. */
const TOLERANCE = 0.1;

function suits(physical: Physical | undefined, volts: number): boolean {
  const stated = physical?.voltage ?? null;
  return stated === null || (volts >= stated.low * (1 - TOLERANCE) && volts <= stated.high * (1 + TOLERANCE));
}

interface Stated {
  readonly unit: Fixture;
  /** The revision its type was copied from; another one may state other things. */
  readonly hash: string | undefined;
  readonly physical: Physical | undefined;
}

function statedOf(rig: Rig, unit: Fixture): Stated {
  const pin = modeOf(rig, unit)?.pin;
  return { unit, hash: pin?.hash, physical: pin?.type.physical };
}

function limitsOf(stated: readonly Stated[]): readonly BreakerLimit[] {
  const types = new Map<string, { readonly type: string; units: number; readonly physical: Physical }>();
  for (const { unit, hash, physical } of stated) {
    if (physical === undefined || physical.perBreaker.length === 0) continue;
    const key = `${foldName(unit.type)} ${hash}`;
    const known = types.get(key);
    if (known === undefined) types.set(key, { type: unit.type, units: 1, physical });
    else known.units += 1;
  }
  return [...types.values()]
    .sort((a, b) => compareNatural(a.type, b.type))
    .flatMap(({ type, units, physical }) =>
      physical.perBreaker.map(({ breaker, most }): BreakerLimit => ({ type, units, breaker, most })),
    );
}
