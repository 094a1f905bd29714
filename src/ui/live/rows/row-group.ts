import { getRow } from '#base/table.ts';
import { type Universe, universeOf } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, positionId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { Grouping } from './view.ts';

/** What a group's heading says, as data. */
export type Heading =
  | { readonly kind: 'none' }
  | { readonly kind: 'position'; readonly name: string }
  | { readonly kind: 'universe'; readonly universe: Universe | null; readonly label: string };

/** Rows under one heading, in order. `slots` is the sum of their footprints. */
export interface RowGroup {
  readonly key: string;
  readonly heading: Heading;
  readonly ids: readonly FixtureId[];
  readonly slots: number;
}

/** Equal for exactly the rows that stand under one heading. */
export function groupKey(fixture: Fixture, grouping: Grouping): string {
  if (grouping === 'none') return '';
  if (grouping === 'position') return positionId(fixture.position);
  const universe = firstUniverse(fixture);
  return universe === null ? '' : String(universe);
}

/** The universe of a fixture's first patched break; null when it has none. */
function firstUniverse(fixture: Fixture): Universe | null {
  for (const address of fixture.addresses) if (address !== null) return universeOf(address);
  return null;
}

/** The heading over a group: a position as the rig spells it, or as its first row does when the rig does not list it. */
export function headingOf(rig: Rig, grouping: Grouping, key: string, first: Fixture): Heading {
  if (grouping === 'none') return { kind: 'none' };
  if (grouping === 'position') return { kind: 'position', name: getRow(rig.positions, key)?.name ?? first.position };
  const label = getRow(rig.universes, key)?.label ?? '';
  return { kind: 'universe', universe: firstUniverse(first), label };
}

/**
 * A total order of group keys: positions as the rig orders them, then unlisted ones in natural order; universes by
 * number; rows without a position or an address last.
 */
export function compareGroups(rig: Rig, grouping: Grouping): (a: string, b: string) => number {
  if (grouping === 'universe') return (a, b) => emptyLast(a, b) || Number(a) - Number(b);
  return (a, b) => {
    const left = getRow(rig.positions, a);
    const right = getRow(rig.positions, b);
    if (left && right) return left.order - right.order || compareNatural(left.name, right.name) || compareNatural(a, b);
    return emptyLast(a, b) || (left ? 0 : 1) - (right ? 0 : 1) || compareNatural(a, b);
  };
}

const emptyLast = (a: string, b: string) => (a === '' ? 1 : 0) - (b === '' ? 1 : 0);
