import type { FixtureList, ListLine } from '#engine/list/read-list.ts';

export const SHOWS = ['all', 'remarked', 'unread'] as const;

/** Which lines of the list to look at. */
export type Show = (typeof SHOWS)[number];

/** The lines to look at: all, those with something to say, or those that were not read. */
export function shownLines(list: FixtureList, show: Show): readonly ListLine[] {
  if (show === 'all') return list.lines;
  return list.lines.filter((line) => line.kind === 'unread' || (show === 'remarked' && line.remarks.length > 0));
}

/** The list without the lines a person leaves out, by their number in the source. Only lines of fixtures can be. */
export function withoutLines(list: FixtureList, leftOut: ReadonlySet<number>): FixtureList {
  if (leftOut.size === 0) return list;
  const lines = list.lines.filter((line) => line.kind !== 'fixtures' || !leftOut.has(line.line));
  return { ...list, lines, fixtures: countFixtures(lines) };
}

/** How many types, whatever their modes, the fixtures of the list are of. */
export function countTypes(list: FixtureList): number {
  return new Set(list.lines.flatMap(fixturesOf).map((cells) => cells.type ?? '')).size;
}

export const countUnread = (list: FixtureList) => list.lines.filter((line) => line.kind === 'unread').length;

const fixturesOf = (line: ListLine) => (line.kind === 'fixtures' ? line.fixtures : []);

const countFixtures = (lines: readonly ListLine[]) => lines.reduce((sum, line) => sum + fixturesOf(line).length, 0);
