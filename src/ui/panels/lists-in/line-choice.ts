import type { FixtureList, ListLine } from '#engine/list/read-list.ts';
import { foldName } from '#engine/model/ids.ts';
import { REMARK_SEVERITY } from './remark-severity.ts';

export const SHOWS = ['all', 'check', 'unread'] as const;

/** Which lines of the list to look at. */
export type Show = (typeof SHOWS)[number];

/** The lines to look at: all, those that want a look, or those that were not read. */
export function shownLines(list: FixtureList, show: Show): readonly ListLine[] {
  if (show === 'all') return list.lines;
  return list.lines.filter((line) => line.kind === 'unread' || (show === 'check' && wantsALook(line)));
}

const wantsALook = ({ remarks }: ListLine) => remarks.some(({ code }) => REMARK_SEVERITY[code] === 'caution');

/** How much of a list comes in. Positions and types are counted by the fixtures that name them. */
export interface Taken {
  readonly fixtures: number;
  readonly positions: number;
  readonly types: number;
  /** Lines that became nothing, whether or not others are left out. */
  readonly unread: number;
  readonly leftOut: number;
  /** Lines that come in and want a look first. */
  readonly toCheck: number;
  /** Columns that hold something of which nothing is taken in. */
  readonly columnsOut: number;
}

/** Counts a list without the lines left out, given by their number in the source. */
export function countTaken(list: FixtureList, leftOut: ReadonlySet<number>): Taken {
  const positions = new Set<string>();
  const types = new Set<string>();
  const counts = { fixtures: 0, unread: 0, leftOut: 0, toCheck: 0 };
  for (const line of list.lines) {
    if (line.kind === 'unread') counts.unread += 1;
    if (line.kind !== 'fixtures') continue;
    if (leftOut.has(line.line)) {
      counts.leftOut += 1;
      continue;
    }
    counts.fixtures += line.fixtures.length;
    if (wantsALook(line)) counts.toCheck += 1;
    for (const { position, type } of line.fixtures) {
      positions.add(foldName(String(position ?? '')));
      types.add(foldName(String(type ?? '')));
    }
  }
  positions.delete('');
  types.delete('');
  const columnsOut = list.columns.filter(({ filled, taken }) => filled > 0 && taken === 0).length;
  return { ...counts, positions: positions.size, types: types.size, columnsOut };
}
