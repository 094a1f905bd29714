import { groupBy } from '#base/group-by.ts';
import { memoByIdentity } from '#base/memo.ts';
import { rowsOf, type Table } from '#base/table.ts';
import { nameKey } from '../../model/card.ts';
import type { Fixture } from '../../model/fixture.ts';
import { foldName } from '../../model/ids.ts';
import { compareNatural } from '../../model/natural-order.ts';
import { type Plant, plantOf, type Splitter } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';

/** What hangs on a data line: a unit, or a splitter that makes several lines of one. */
export type ChainLink =
  | { readonly kind: 'unit'; readonly id: string; readonly fixture: Fixture }
  | { readonly kind: 'splitter'; readonly id: string; readonly splitter: Splitter };

/** What is on the run of a folded name, from its beginning to its end. [RN1] */
export function runChain(rig: Rig, run: string): readonly ChainLink[] {
  return chainOf(unitsByRun(rig.fixtures).get(run) ?? [], splittersOn(plantOf(rig.cards), run));
}

/** Units and splitters in the order in which the line passes them. The order in which they are given plays no part. [RN1] */
export function chainOf(units: Iterable<Fixture>, splitters: readonly Splitter[]): readonly ChainLink[] {
  const links: ChainLink[] = splitters.map((splitter) => ({ kind: 'splitter', id: splitter.id, splitter }));
  for (const fixture of units) links.push({ kind: 'unit', id: fixture.id, fixture });
  return links.sort(compareLinks);
}

/** The units of each run, by its folded name; in no order. */
export const unitsByRun: (fixtures: Table<Fixture>) => ReadonlyMap<string, readonly Fixture[]> = memoByIdentity(
  (fixtures) => gathered(rowsOf(fixtures), (fixture) => fixture.run),
);

/** The splitters on a run, by its folded name. */
export const splittersOn = (plant: Plant, run: string): readonly Splitter[] => splittersByRun(plant).get(run) ?? [];

const splittersByRun: (plant: Plant) => ReadonlyMap<string, readonly Splitter[]> = memoByIdentity((plant) =>
  gathered(plant.splitters, ({ run }) => run),
);

function gathered<Row>(rows: Iterable<Row>, runOf: (row: Row) => string): ReadonlyMap<string, readonly Row[]> {
  const groups = groupBy(rows, (row) => nameKey(runOf(row)));
  return new Map([...groups].filter(([key]) => key !== ''));
}

export const alongOf = (link: ChainLink): number => (link.kind === 'unit' ? link.fixture.along : link.splitter.along);

function compareLinks(a: ChainLink, b: ChainLink): number {
  const byPlace = alongOf(a) - alongOf(b);
  if (byPlace !== 0) return byPlace;
  if (a.kind === 'unit' && b.kind === 'unit') return compareUnits(a.fixture, b.fixture);
  if (a.kind === 'splitter' && b.kind === 'splitter') return compareIds(a.id, b.id);
  return a.kind === 'unit' ? -1 : 1;
}

/** Where nobody has said an order, units come as they hang: by position and number. */
export function compareUnits(a: Fixture, b: Fixture): number {
  return (
    compareNatural(foldName(a.position), foldName(b.position)) ||
    compareNatural(foldName(a.unit), foldName(b.unit)) ||
    compareIds(a.id, b.id)
  );
}

const compareIds = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
