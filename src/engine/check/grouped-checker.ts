import type { UnitChange } from '../address/occupancy-index.ts';
import type { Unit } from '../address/unit.ts';
import type { CardKind } from '../model/card.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { Plant } from '../model/plant.ts';
import type { CheckStep, PartChecker } from './part-checker.ts';
import { type OpenDelta, StandingFindings } from './standing-findings.ts';

/** What is looked at of units that belong together: a run, a circuit, a position. */
export interface GroupRule {
  /** The kinds of cards that its findings depend on. */
  readonly kinds: readonly CardKind[];
  /** Whether the crew has said anything that it could speak of. While not, units are not even grouped. */
  isOn(plant: Plant): boolean;
  /** The group of a unit; empty for none. It depends on the row alone. */
  keyOf(fixture: Fixture): string;
  /** Whether a change of a unit that stays in its group can matter. */
  matters(change: UnitChange): boolean;
  /** Groups that are there without any unit. */
  keys(plant: Plant): Iterable<string>;
  /** What is found of one group. The order of units must not matter. */
  findings(group: Group): readonly Finding[];
}

export interface Group {
  readonly key: string;
  readonly units: ReadonlySet<Unit>;
  readonly plant: Plant;
}

const NO_UNITS: ReadonlySet<Unit> = new Set();

/** Findings group by group. A step costs what the groups hold that it touches; a change of cards, what all of them hold. */
export class GroupedChecker implements PartChecker {
  readonly #rule: GroupRule;
  readonly #standing = new StandingFindings<string>();
  #groups: Map<string, Set<Unit>> | undefined;
  /** Keys that have been settled and may have findings. */
  #settled = new Set<string>();

  constructor(rule: GroupRule) {
    this.#rule = rule;
  }

  update(step: CheckStep, delta: OpenDelta): void {
    const rule = this.#rule;
    if (!rule.isOn(step.plant)) {
      if (this.#groups === undefined) return;
      this.#groups = undefined;
      for (const key of this.#settled) this.#standing.settle(key, [], delta);
      this.#settled.clear();
      return;
    }
    const touched = this.#groups === undefined ? this.#groupAll(step) : this.#regroup(step);
    for (const key of touched) this.#settle(key, step.plant, delta);
  }

  #groupAll({ index, plant }: CheckStep): Iterable<string> {
    const groups = new Map<string, Set<Unit>>();
    this.#groups = groups;
    for (const unit of index.units()) this.#add(this.#rule.keyOf(unit.fixture), unit);
    return new Set([...groups.keys(), ...this.#rule.keys(plant)]);
  }

  #regroup({ changes, replanted, plant }: CheckStep): Iterable<string> {
    const touched = new Set<string>();
    for (const change of changes) this.#take(change, touched);
    if (this.#rule.kinds.some((kind) => replanted.has(kind))) {
      for (const key of this.#groups?.keys() ?? []) touched.add(key);
      for (const key of this.#rule.keys(plant)) touched.add(key);
      for (const key of this.#settled) touched.add(key);
    }
    return touched;
  }

  #take(change: UnitChange, touched: Set<string>): void {
    const { unit, before, after } = change;
    const old = before === undefined ? '' : this.#rule.keyOf(before);
    const now = after === undefined ? '' : this.#rule.keyOf(after);
    if (old !== now) {
      this.#drop(old, unit);
      this.#add(now, unit);
      if (old !== '') touched.add(old);
      if (now !== '') touched.add(now);
    } else if (now !== '' && this.#rule.matters(change)) touched.add(now);
  }

  #add(key: string, unit: Unit): void {
    if (key === '') return;
    const group = this.#groups?.get(key);
    if (group === undefined) this.#groups?.set(key, new Set([unit]));
    else group.add(unit);
  }

  #drop(key: string, unit: Unit): void {
    const group = this.#groups?.get(key);
    group?.delete(unit);
    if (group?.size === 0) this.#groups?.delete(key);
  }

  #settle(key: string, plant: Plant, delta: OpenDelta): void {
    const found = this.#rule.findings({ key, units: this.#groups?.get(key) ?? NO_UNITS, plant });
    if (found.length === 0) this.#settled.delete(key);
    else this.#settled.add(key);
    this.#standing.settle(key, found, delta);
  }
}
