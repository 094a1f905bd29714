import { present } from '#base/assert.ts';
import { getRow } from '#base/table.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { compareRows, footprintOf } from './compare-rows.ts';
import { isShown } from './is-shown.ts';
import { groupKey, type Heading, headingOf, type RowGroup } from './row-group.ts';
import { type IsFlagged, layoutOf, type RowOrder, rowOrder } from './row-order.ts';
import type { View } from './view.ts';

/** One fixture that is not what it was; `before` or `after` is missing when it came or went. */
export interface RowDifference {
  readonly id: string;
  readonly before: Fixture | undefined;
  readonly after: Fixture | undefined;
}

/** How findings came and went with a change. */
export interface FlagChange {
  /** Fixtures that had findings and have none now, or the other way round. */
  readonly reflagged: readonly FixtureId[];
  readonly wasFlagged: IsFlagged;
  readonly isFlagged: IsFlagged;
}

/** Where more rows than this change at once, sorting anew is cheaper than moving them one by one. */
const MOVE_AT_MOST = 200;

/**
 * The order after a change of the rig: equal to `rowOrder` from scratch, but each changed row is found and moved by
 * binary search. `changes` are all fixtures that differ between `order.rig` and `rig`.
 */
export function advanceOrder(
  order: RowOrder,
  rig: Rig,
  changes: readonly RowDifference[],
  flags: FlagChange,
): RowOrder {
  const { view } = order;
  const moves = view.filter.flagged ? withReflagged(order.rig, rig, changes, flags.reflagged) : changes;
  if (order.rig.modes !== rig.modes || moves.length > MOVE_AT_MOST) return rowOrder(rig, view, flags.isFlagged);
  const groups = new Map(order.layout.groups.map((group) => [group.key, group]));
  const touched = new Set<string>();
  const arriving: Fixture[] = [];
  for (const { before, after } of moves) {
    const was = before && isShown(order.rig, before, view.filter, flags.wasFlagged) ? before : undefined;
    const is = after && isShown(rig, after, view.filter, flags.isFlagged) ? after : undefined;
    if (was) touched.add(groupKey(was, view.grouping));
    if (was && is && staysPut(rig, view, was, is)) continue;
    if (was) takeOut(groups, order.rig, view, was);
    if (is) arriving.push(is);
  }
  for (const fixture of arriving) touched.add(putIn(groups, rig, view, fixture));
  return { rig, view, layout: nextLayout(order, rig, groups, touched) };
}

function withReflagged(
  before: Rig,
  rig: Rig,
  changes: readonly RowDifference[],
  reflagged: readonly FixtureId[],
): readonly RowDifference[] {
  const changed = new Set<string>(changes.map(({ id }) => id));
  const more = reflagged.filter((id) => !changed.has(id));
  return [
    ...changes,
    ...more.map((id) => ({ id, before: getRow(before.fixtures, id), after: getRow(rig.fixtures, id) })),
  ];
}

function staysPut(rig: Rig, view: View, was: Fixture, is: Fixture): boolean {
  return (
    groupKey(was, view.grouping) === groupKey(is, view.grouping) &&
    compareRows(rig, view.sort)(was, is) === 0 &&
    footprintOf(rig, was) === footprintOf(rig, is)
  );
}

function takeOut(groups: Map<string, RowGroup>, rig: Rig, view: View, fixture: Fixture): void {
  const key = groupKey(fixture, view.grouping);
  const group = present(groups.get(key), `row ${fixture.id} stands in no group ${key}`);
  const at = placeOf(group.ids, rig, view, fixture);
  if (group.ids[at] !== fixture.id) throw new Error(`row ${fixture.id} is not at place ${at} of group ${key}`);
  const ids = group.ids.toSpliced(at, 1);
  if (ids.length === 0) groups.delete(key);
  else groups.set(key, { ...group, ids, slots: group.slots - footprintOf(rig, fixture) });
}

function putIn(groups: Map<string, RowGroup>, rig: Rig, view: View, fixture: Fixture): string {
  const key = groupKey(fixture, view.grouping);
  const group = groups.get(key) ?? { key, heading: headingOf(rig, view.grouping, key, fixture), ids: [], slots: 0 };
  const ids = group.ids.toSpliced(placeOf(group.ids, rig, view, fixture), 0, fixture.id);
  groups.set(key, { ...group, ids, slots: group.slots + footprintOf(rig, fixture) });
  return key;
}

/** Where a fixture stands, or would stand, among sorted ids. */
export function placeOf(ids: readonly FixtureId[], rig: Rig, view: View, fixture: Fixture): number {
  const compare = compareRows(rig, view.sort);
  let low = 0;
  let high = ids.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(fixtureAt(rig, ids, middle), fixture) < 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

function fixtureAt(rig: Rig, ids: readonly FixtureId[], index: number): Fixture {
  const id = present(ids[index], `no row at ${index} of ${ids.length}`);
  return present(getRow(rig.fixtures, id), `row ${id} is not in the rig`);
}

function nextLayout(
  order: RowOrder,
  rig: Rig,
  groups: Map<string, RowGroup>,
  touched: ReadonlySet<string>,
): RowOrder['layout'] {
  const { layout, view } = order;
  const reheaded = order.rig.positions !== rig.positions || order.rig.universes !== rig.universes;
  for (const [key, group] of groups) {
    if (!reheaded && !touched.has(key)) continue;
    const heading = headingOf(rig, view.grouping, key, fixtureAt(rig, group.ids, 0));
    if (!sameHeading(heading, group.heading)) groups.set(key, { ...group, heading });
  }
  const same = groups.size === layout.groups.length && layout.groups.every((group) => groups.get(group.key) === group);
  return same && !reheaded ? layout : layoutOf(rig, view, [...groups.values()]);
}

function sameHeading(a: Heading, b: Heading): boolean {
  if (a.kind === 'position') return b.kind === 'position' && a.name === b.name;
  if (a.kind === 'universe') return b.kind === 'universe' && a.universe === b.universe && a.label === b.label;
  return b.kind === 'none';
}
