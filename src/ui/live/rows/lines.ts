import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { placeOf } from './advance-order.ts';
import { groupKey, type RowGroup } from './row-group.ts';
import type { Layout, RowOrder } from './row-order.ts';

/** What one line of the sheet shows. */
export type Line =
  | { readonly kind: 'heading'; readonly group: RowGroup }
  | { readonly kind: 'row'; readonly id: FixtureId };

export const lineCount = (layout: Layout): number => layout.starts.at(-1) ?? 0;

/** The line at `index`, from 0; undefined outside. */
export function lineAt(layout: Layout, index: number): Line | undefined {
  const at = groupAt(layout, index);
  const group = layout.groups[at];
  if (group === undefined || index < 0) return undefined;
  const within = index - (layout.starts[at] ?? 0) - headingLines(group);
  if (within < 0) return { kind: 'heading', group };
  const id = group.ids[within];
  return id === undefined ? undefined : { kind: 'row', id };
}

const headingLines = (group: RowGroup) => (group.heading.kind === 'none' ? 0 : 1);

function groupAt(layout: Layout, index: number): number {
  let low = 0;
  let high = layout.groups.length;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((layout.starts[middle] ?? 0) <= index) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The line a row stands at; -1 when it is not shown. */
export function lineOf(order: RowOrder, id: FixtureId): number {
  const { rig, view, layout } = order;
  const fixture = getRow(rig.fixtures, id);
  if (fixture === undefined) return -1;
  const key = groupKey(fixture, view.grouping);
  const at = layout.groups.findIndex((group) => group.key === key);
  const group = layout.groups[at];
  if (group === undefined) return -1;
  const place = placeOf(group.ids, rig, view, fixture);
  return group.ids[place] === id ? (layout.starts[at] ?? 0) + headingLines(group) + place : -1;
}

/** The row at `index`, or else the nearest one on the way `step` goes, or else the other way; undefined in an empty sheet. */
export function rowNear(layout: Layout, index: number, step: 1 | -1): FixtureId | undefined {
  const last = lineCount(layout) - 1;
  const start = Math.max(0, Math.min(last, index));
  for (const way of [step, -step]) {
    for (let at = start; at >= 0 && at <= last; at += way) {
      const line = lineAt(layout, at);
      if (line?.kind === 'row') return line.id;
    }
  }
  return undefined;
}

/** The rows from one line to another, both counted in, whichever is first. */
export function rowsBetween(layout: Layout, from: number, to: number): readonly FixtureId[] {
  const ids: FixtureId[] = [];
  for (let at = Math.min(from, to); at <= Math.max(from, to); at++) {
    const line = lineAt(layout, at);
    if (line?.kind === 'row') ids.push(line.id);
  }
  return ids;
}
