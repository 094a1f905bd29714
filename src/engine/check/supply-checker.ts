import type { UnitChange } from '../address/occupancy-index.ts';
import type { Unit } from '../address/unit.ts';
import { nameKey } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Plant, Supply } from '../model/plant.ts';
import type { PlantTrouble } from '../model/plant-trouble.ts';
import { calledBy, voltsOf, voltsToNeutral } from '../supply/circuit-feed.ts';
import { exceeds, rulesOf, usableAmps } from '../supply/load-rules.ts';
import { lineCurrents, type SeatedLoad, UNBALANCED, unbalance } from '../supply/supply-loads.ts';
import { unitsLoad } from '../supply/units-load.ts';
import { hundredths, isOtherwiseTyped } from './circuit-findings.ts';
import { makeFinding } from './make-finding.ts';
import type { CheckStep, PartChecker } from './part-checker.ts';
import { type OpenDelta, StandingFindings } from './standing-findings.ts';

/** What is known of a described circuit: its units, and what they draw until one of them changes. */
interface Held {
  readonly units: Set<Unit>;
  amps: number | undefined;
}

/**
 * What is found of the lines of supplies. A step costs the units of the circuits it touches, and the circuits of their supplies; while
 * nobody described a supply it costs nothing. [SP3]–[SP6] [SP16]
 */
export class SupplyChecker implements PartChecker {
  readonly #standing = new StandingFindings<'lines'>();
  #circuits: Map<string, Held> | undefined;

  update(step: CheckStep, delta: OpenDelta): void {
    const { plant, replanted } = step;
    if (plant.supplies.size + plant.circuits.size === 0) {
      if (this.#circuits !== undefined) this.#standing.settle('lines', [], delta);
      this.#circuits = undefined;
      return;
    }
    const redescribed = replanted.has('circuit') || replanted.has('supply') || replanted.has('setup');
    const touched = this.#circuits === undefined ? this.#groupAll(step) : this.#regroup(step.changes);
    if (redescribed) for (const held of this.#circuits?.values() ?? []) held.amps = undefined;
    if (redescribed || touched) this.#standing.settle('lines', this.#findings(plant), delta);
  }

  #groupAll({ index }: CheckStep): boolean {
    this.#circuits = new Map();
    for (const unit of index.units()) this.#add(unit.fixture, unit);
    return true;
  }

  #regroup(changes: readonly UnitChange[]): boolean {
    let touched = false;
    for (const change of changes) {
      const { unit, before, after } = change;
      const stays = before !== undefined && after !== undefined && keyOf(before) === keyOf(after);
      if (stays && (keyOf(after) === '' || !isOtherwiseTyped(change))) continue;
      touched = true;
      if (before !== undefined) this.#drop(before, unit);
      if (after !== undefined) this.#add(after, unit);
    }
    return touched;
  }

  #add(fixture: Fixture, unit: Unit): void {
    const key = keyOf(fixture);
    if (key === '') return;
    const held = this.#circuits?.get(key);
    if (held === undefined) this.#circuits?.set(key, { units: new Set([unit]), amps: undefined });
    else {
      held.units.add(unit);
      held.amps = undefined;
    }
  }

  #drop(fixture: Fixture, unit: Unit): void {
    const held = this.#circuits?.get(keyOf(fixture));
    if (held === undefined) return;
    held.units.delete(unit);
    held.amps = undefined;
  }

  #findings(plant: Plant): readonly Finding[] {
    const seated = new Map<string, SeatedLoad[]>([...plant.supplies.keys()].map((key) => [key, []]));
    for (const card of plant.circuits.values()) {
      const of = seated.get(nameKey(card.supply));
      of?.push({ card, amps: this.#ampsOf(card.key, voltsOf(card, plant)) });
    }
    const troubles = [...plant.supplies.values()].flatMap((supply) =>
      troublesOf(supply, seated.get(supply.key) ?? [], plant),
    );
    return [...voltsUnsaid(plant), ...troubles].map((trouble) => makeFinding(trouble, []));
  }

  #ampsOf(key: string, volts: number): number {
    const held = this.#circuits?.get(key);
    if (held === undefined) return 0;
    held.amps ??= unitsLoad(held.units, volts).amps;
    return held.amps;
  }
}

const keyOf = (fixture: Fixture) => nameKey(fixture.circuit);

function troublesOf(supply: Supply, circuits: readonly SeatedLoad[], plant: Plant): readonly PlantTrouble[] {
  const { lines, neutral } = lineCurrents(supply, circuits, voltsToNeutral(supply, plant));
  const troubles = lines.flatMap((amps, at) => ofLine(supply, at + 1, amps, plant));
  const { rating } = supply;
  const name = calledBy(supply.key, supply.name);
  if (rating !== null && supply.phases === 3 && exceeds(neutral, rating)) {
    troubles.push({ rule: 'neutral-over-rating', supply: name, amps: hundredths(neutral), rating });
  }
  if (unbalance(lines) > UNBALANCED) {
    const most = hundredths(Math.max(...lines));
    troubles.push({ rule: 'lines-unbalanced', supply: name, most, least: hundredths(Math.min(...lines)) });
  }
  return troubles;
}

function ofLine(supply: Supply, line: number, amps: number, plant: Plant): PlantTrouble[] {
  const { rating } = supply;
  if (rating === null) return [];
  const rules = rulesOf(plant);
  const of = { supply: calledBy(supply.key, supply.name), line, amps: hundredths(amps), rating };
  if (exceeds(amps, rating)) return [{ rule: 'line-over-rating', ...of }];
  if (rules.share === null || !exceeds(amps, usableAmps(rating, rules))) return [];
  return [{ rule: 'line-over-share', ...of, share: rules.share, rules: rules.name }];
}

/** While a figure hangs on a voltage that nobody said. */
function voltsUnsaid(plant: Plant): readonly PlantTrouble[] {
  const { volts, voltage } = rulesOf(plant);
  if (voltage === 'said') return [];
  const isSaid = (name: string) => (plant.supplies.get(nameKey(name))?.volts ?? null) !== null;
  const depends = [...plant.circuits.values()].some((circuit) => !isSaid(circuit.supply));
  return depends ? [{ rule: 'volts-unsaid', volts }] : [];
}
