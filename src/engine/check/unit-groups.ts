import type { Unit } from '../address/unit.ts';

/**
 * Units by a key that most of them have to themselves. A lone unit stands without a list around it: with tens of thousands
 * of units that halves the memory.
 */
export class UnitGroups<Key> {
  readonly #groups = new Map<Key, Unit | Unit[]>();

  add(key: Key, unit: Unit): void {
    const group = this.#groups.get(key);
    if (group === undefined) this.#groups.set(key, unit);
    else if (Array.isArray(group)) group.push(unit);
    else this.#groups.set(key, [group, unit]);
  }

  drop(key: Key, unit: Unit): void {
    const group = this.#groups.get(key);
    if (group === unit) this.#groups.delete(key);
    else if (Array.isArray(group)) this.#shrink(key, group, unit);
    else throw new Error(`${unit.fixture.id} is not in group ${String(key)}`);
  }

  #shrink(key: Key, group: Unit[], unit: Unit): void {
    const at = group.lastIndexOf(unit);
    if (at < 0) throw new Error(`${unit.fixture.id} is not in group ${String(key)}`);
    const last = group.pop() as Unit;
    if (at < group.length) group[at] = last;
    if (group.length === 1) this.#groups.set(key, group[0] as Unit);
  }

  /** The units of a group of two or more; undefined when the key has none or one. In no order. */
  shared(key: Key): readonly Unit[] | undefined {
    const group = this.#groups.get(key);
    return Array.isArray(group) ? group : undefined;
  }

  /** Every key that two or more units share, with how many. */
  *sharedKeys(): Generator<Key> {
    for (const [key, group] of this.#groups) if (Array.isArray(group)) yield key;
  }
}
