import { present } from '#base/assert.ts';
import { rowsOf } from '#base/table.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { compareRows, footprintOf } from './compare-rows.ts';
import { isShown } from './is-shown.ts';
import { compareGroups, groupKey, headingOf, type RowGroup } from './row-group.ts';
import type { View } from './view.ts';

/** The rows one person sees, sorted, filtered and grouped: a value; nothing in it changes. */
export interface RowOrder {
  readonly rig: Rig;
  readonly view: View;
  /** Stays the same object while no row moves, comes or goes and no heading changes. */
  readonly layout: Layout;
}

/** Groups of row ids, and at which line each stands. */
export interface Layout {
  readonly groups: readonly RowGroup[];
  /** Line at which each group starts, its heading included; the last entry is the number of lines. */
  readonly starts: readonly number[];
  readonly rowCount: number;
}

/** Says whether a fixture has findings. */
export type IsFlagged = (id: FixtureId) => boolean;

/** The order of all rows of a rig, from scratch. */
export function rowOrder(rig: Rig, view: View, isFlagged: IsFlagged): RowOrder {
  const compare = compareRows(rig, view.sort);
  const members = new Map<string, Fixture[]>();
  for (const fixture of rowsOf(rig.fixtures)) {
    if (!isShown(rig, fixture, view.filter, isFlagged)) continue;
    const key = groupKey(fixture, view.grouping);
    const group = members.get(key);
    if (group) group.push(fixture);
    else members.set(key, [fixture]);
  }
  const groups = [...members].map(([key, fixtures]) => groupOf(rig, view, key, fixtures.sort(compare)));
  return { rig, view, layout: layoutOf(rig, view, groups) };
}

function groupOf(rig: Rig, view: View, key: string, fixtures: readonly Fixture[]): RowGroup {
  const first = present(fixtures[0], `group ${key} has no row`);
  let slots = 0;
  for (const fixture of fixtures) slots += footprintOf(rig, fixture);
  return { key, heading: headingOf(rig, view.grouping, key, first), ids: fixtures.map(({ id }) => id), slots };
}

/** Sorts groups and counts their lines. */
export function layoutOf(rig: Rig, view: View, groups: RowGroup[]): Layout {
  const compare = compareGroups(rig, view.grouping);
  groups.sort((a, b) => compare(a.key, b.key));
  const heading = view.grouping === 'none' ? 0 : 1;
  const starts = [0];
  let line = 0;
  for (const { ids } of groups) {
    line += heading + ids.length;
    starts.push(line);
  }
  return { groups, starts, rowCount: line - heading * groups.length };
}
