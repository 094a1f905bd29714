import { rowsOf } from '#base/table.ts';
import type { Fixture } from '../model/fixture.ts';
import { type PositionId, positionId } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import type { Rig } from '../model/rig.ts';
import { compareRowOrder } from '../model/row-order.ts';

/**
 * Fixtures by where they hang: positions in the rig's order, those it does not list behind them by name, no position
 * last; then units in natural order, and rows as they were put.
 */
export function byPlace(rig: Rig): Fixture[] {
  const groups = groupsByPlace(rig);
  const order = new Map<string, number>();
  for (const position of rowsOf(rig.positions)) order.set(position.id, position.order);
  const rank = (id: PositionId) => order.get(id) ?? (id === '' ? Number.MAX_VALUE : Number.MAX_VALUE / 2);
  const places = [...groups.keys()].sort((a, b) => rank(a) - rank(b) || compareNatural(a, b));
  const fixtures: Fixture[] = [];
  for (const place of places) {
    for (const { fixture } of (groups.get(place) ?? []).map(keyed).sort(compareUnits)) fixtures.push(fixture);
  }
  return fixtures;
}

/** Grouped by the position as written first, since folding a name costs more than everything else here. */
function groupsByPlace(rig: Rig): Map<PositionId, Fixture[]> {
  const written = new Map<string, Fixture[]>();
  for (const fixture of rowsOf(rig.fixtures)) {
    const group = written.get(fixture.position);
    if (group === undefined) written.set(fixture.position, [fixture]);
    else group.push(fixture);
  }
  const groups = new Map<PositionId, Fixture[]>();
  for (const [name, group] of written) {
    const id = positionId(name);
    const others = groups.get(id);
    groups.set(id, others === undefined ? group : [...others, ...group]);
  }
  return groups;
}

interface Keyed {
  readonly fixture: Fixture;
  /** The unit as a number when it is nothing else: most are, and compare faster so. */
  readonly number: number | null;
}

const keyed = (fixture: Fixture): Keyed => ({
  fixture,
  number: /^[1-9]\d{0,8}$/.test(fixture.unit) ? Number(fixture.unit) : null,
});

function compareUnits(a: Keyed, b: Keyed): number {
  const byUnit =
    a.number !== null && b.number !== null ? a.number - b.number : compareNatural(a.fixture.unit, b.fixture.unit);
  return byUnit || compareRowOrder(a.fixture, b.fixture);
}

/** Fixtures by channel; those without one behind the others, by where they hang. */
export function byChannel(rig: Rig): Fixture[] {
  const fixtures = byPlace(rig);
  return fixtures.sort((a, b) => (a.channel ?? Number.MAX_VALUE) - (b.channel ?? Number.MAX_VALUE));
}
