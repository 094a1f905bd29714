import type { UnitChange } from '../address/occupancy-index.ts';
import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Circuit, Plant } from '../model/plant.ts';
import type { PlantTrouble } from '../model/plant-trouble.ts';
import { calledBy, seatOf, supplyOf, voltsOf } from '../supply/circuit-feed.ts';
import { exceeds, rulesOf, usableAmps } from '../supply/load-rules.ts';
import { allowedBy, firstName, speaksOf, type UnitsLoad, unitsLoad } from '../supply/units-load.ts';
import type { Group, GroupRule } from './grouped-checker.ts';
import { makeFinding } from './make-finding.ts';

/** What is found of each circuit once one is described. [SP1] [SP2] [SP7]–[SP12] */
export const circuitRule: GroupRule = {
  kinds: ['circuit', 'supply', 'setup'],
  isOn: ({ circuits }) => circuits.size > 0,
  keyOf: (fixture) => nameKey(fixture.circuit),
  matters: isOtherwiseTyped,
  keys: ({ circuits }) => circuits.keys(),
  findings: (group) => {
    const card = group.plant.circuits.get(group.key);
    return card === undefined ? undescribed(group) : findingsOf(card, group);
  },
};

/** Whether a unit became another one, or its mode another: with it change power, weight and voltage. */
export function isOtherwiseTyped({ before, after, beforeMode, unit }: UnitChange): boolean {
  return before === after || before?.type !== after?.type || beforeMode !== unit.modeKey;
}

function undescribed({ units }: Group): readonly Finding[] {
  const fixtures = [...units].map(({ fixture }) => fixture);
  if (fixtures.length === 0) return [];
  const circuit = firstName(fixtures.map((fixture) => fixture.circuit));
  return [found({ rule: 'circuit-undescribed', circuit }, fixtures)];
}

function findingsOf(card: Circuit, { units, plant }: Group): readonly Finding[] {
  const volts = voltsOf(card, plant);
  const load = unitsLoad(units, volts);
  const circuit = calledBy(card.key, card.name);
  const loaded = [...units].map(({ fixture }) => fixture);
  const troubles: (readonly [PlantTrouble, readonly Fixture[]])[] = [];
  if (load.unsuited.length > 0) {
    troubles.push([{ rule: 'unit-voltage', circuit, volts: hundredths(volts) }, load.unsuited]);
  }
  if (load.unknown.length > 0) troubles.push([{ rule: 'circuit-power-unknown', circuit }, load.unknown]);
  for (const trouble of ofRating(card, load, plant)) troubles.push([trouble, loaded]);
  for (const trouble of ofSupply(card, plant)) troubles.push([trouble, loaded]);
  return [...troubles.map(([trouble, fixtures]) => found(trouble, fixtures)), ...crowded(card, volts, load)];
}

/** [SP1] [SP2] */
function ofRating({ key, name, rating }: Circuit, load: UnitsLoad, plant: Plant): readonly PlantTrouble[] {
  if (rating === null) return [];
  const circuit = calledBy(key, name);
  const rules = rulesOf(plant);
  const amps = hundredths(load.amps);
  if (exceeds(load.amps, rating)) return [{ rule: 'circuit-over-rating', circuit, amps, rating }];
  if (rules.share === null || !exceeds(load.amps, usableAmps(rating, rules))) return [];
  return [{ rule: 'circuit-over-share', circuit, amps, rating, share: rules.share, rules: rules.name }];
}

/** [SP8] [SP9] */
function ofSupply(card: Circuit, plant: Plant): readonly PlantTrouble[] {
  const { phase } = card;
  const circuit = calledBy(card.key, card.name);
  const supply = supplyOf(card, plant);
  if (supply === undefined) {
    return nameKey(card.supply) === '' ? [] : [{ rule: 'circuit-supply-gone', circuit, supply: card.supply }];
  }
  if (seatOf(card, supply) !== undefined) return [];
  return [{ rule: 'circuit-phase', circuit, supply: calledBy(supply.key, supply.name), phases: supply.phases, phase }];
}

/** [SP10] */
function crowded(card: Circuit, volts: number, { limits }: UnitsLoad): readonly Finding[] {
  const { key, name, breaker, rating } = card;
  const circuit = calledBy(key, name);
  return limits.flatMap((limit) => {
    const most = allowedBy(limit);
    if (most === null || limit.units.length <= most) return [];
    if (speaksOf(limit, { breaker, rating, volts }) !== 'this') return [];
    const said = limit.breaker.trim() === '' ? breaker : limit.breaker;
    const units = limit.units.length;
    return [found({ rule: 'circuit-crowded', circuit, type: limit.type, units, breaker: said, most }, limit.units)];
  });
}

const found = (trouble: PlantTrouble, fixtures: readonly Fixture[]): Finding =>
  makeFinding(
    trouble,
    fixtures.map(({ id }) => id),
  );

export const hundredths = (value: number): number => Math.round(value * 100) / 100;
