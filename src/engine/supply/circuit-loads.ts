import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { foldName } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import { type Circuit, type Plant, plantOf, type Supply } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { byPlace } from '../sheet/sheet-order.ts';
import { supplyOf, voltsOf } from './circuit-feed.ts';
import { ratingFor, rulesOf, usableAmps } from './load-rules.ts';
import { firstName, type UnitsLoad, unitsLoad } from './units-load.ts';

/** What one circuit carries, as far as its units' types state it. */
export interface CircuitLoad extends UnitsLoad {
  /** Its folded name; empty for the units that name none. */
  readonly key: string;
  /** As its card writes it, else its units. */
  readonly circuit: string;
  /** What the crew says of it; undefined while nobody did. */
  readonly card: Circuit | undefined;
  /** The supply it is on, where there is one of that name. */
  readonly supply: Supply | undefined;
  readonly volts: number;
  /** By where they hang. */
  readonly units: readonly Fixture[];
  /** The least rating a breaker must have for that by the rules, taking all of it for continuous. */
  readonly asks: number;
  /** What its breaker may carry for hours by the rules; null while its rating is not said. */
  readonly usable: number | null;
}

/** Circuits by their names in natural order, those that only a card describes too; units that name none last. Names are compared folded. [SU6] */
export function circuitLoads(rig: Rig): readonly CircuitLoad[] {
  const plant = plantOf(rig.cards);
  const circuits = new Map<string, Fixture[]>([...plant.circuits.keys()].map((key) => [key, []]));
  for (const fixture of byPlace(rig)) {
    const key = foldName(fixture.circuit);
    const units = circuits.get(key);
    if (units === undefined) circuits.set(key, [fixture]);
    else units.push(fixture);
  }
  const rank = (key: string) => (key === '' ? 1 : 0);
  return [...circuits]
    .sort(([a], [b]) => rank(a) - rank(b) || compareNatural(a, b))
    .map(([key, units]) => loadOf(rig, plant, { key, units }));
}

function loadOf(rig: Rig, plant: Plant, { key, units }: Pick<CircuitLoad, 'key' | 'units'>): CircuitLoad {
  const card = key === '' ? undefined : plant.circuits.get(key);
  const rules = rulesOf(plant);
  const volts = voltsOf(card, plant);
  const load = unitsLoad(
    units.map((fixture) => ({ fixture, mode: modeOf(rig, fixture) })),
    volts,
  );
  return {
    ...load,
    key,
    circuit: key === '' ? '' : (card?.name.trim() ?? firstName(units.map(({ circuit }) => circuit))),
    card,
    supply: supplyOf(card, plant),
    volts,
    units,
    asks: ratingFor(load.amps, 0, rules),
    usable: (card?.rating ?? null) === null ? null : usableAmps(card?.rating ?? 0, rules),
  };
}
