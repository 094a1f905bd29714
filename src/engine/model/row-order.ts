import { rowsOf } from '#base/table.ts';
import type { Fixture } from './fixture.ts';
import type { Rig } from './rig.ts';

/** Compares fixtures by where their rows were put: by `order`, ties by id. A total order. */
export function compareRowOrder(a: Fixture, b: Fixture): number {
  return a.order - b.order || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** The fixtures of a rig in the order in which their rows were put. */
export function rowsInOrder(rig: Rig): Fixture[] {
  return [...rowsOf(rig.fixtures)].sort(compareRowOrder);
}
