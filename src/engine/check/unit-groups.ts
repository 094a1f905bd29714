import type { Unit } from '../address/unit.ts';

/**
 * Units by a key that most of them have to themselves. Those that share one stand apart from the lone ones: they are few,
 * and they are all that is ever asked for.
 */
export class UnitGroups<Key> {
  readonly #lone = new Map<Key, Unit>();
  readonly #shared = new Map<Key, Unit[]>();

  add(key: Key, unit: Unit): void {
    const group = this.#shared.get(key);
    if (group !== undefined) {
      group.push(unit);
      return;
    }
    const other = this.#lone.get(key);
    if (other === undefined) this.#lone.set(key, unit);
    else {
      this.#lone.delete(key);
      this.#shared.set(key, [other, unit]);
    }
  }

  drop(key: Key, unit: Unit): void {
    const group = this.#shared.get(key);
    if (group === undefined) {
      if (this.#lone.get(key) !== unit) throw new Error(`${unit.fixture.id} is not in group ${String(key)}`);
      this.#lone.delete(key);
      return;
    }
    const at = group.lastIndexOf(unit);
    if (at < 0) throw new Error(`${unit.fixture.id} is not in group ${String(key)}`);
    group.splice(at, 1);
    if (group.length > 1) return;
    this.#shared.delete(key);
    this.#lone.set(key, group[0] as Unit);
  }

  /** The units of a group of two or more; undefined when the key has none or one. In no order. */
  shared(key: Key): readonly Unit[] | undefined {
    return this.#shared.get(key);
  }
}
