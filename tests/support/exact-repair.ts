import { getRow } from '#base/table.ts';
import { slotRuns } from '#engine/address/claim.ts';
import { actAsOne } from '#engine/address/unit.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import { type FixtureId, modeId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { slotsOf } from '#tests/support/planned.ts';
import { idsOf } from '#tests/support/random-rig.ts';

interface Group {
  readonly ids: readonly FixtureId[];
  readonly slots: ReadonlySet<number>;
  readonly fixed: 'fixed' | 'free';
  readonly whole: 'whole' | 'broken';
  readonly cost: number;
}

/**
 * The most that can stay of a small rig, of all that may move, by trying every set of units: a second opinion on repair that counts slots one by
 * one and shares no search with it. `cost` is what moving one unit costs.
 */
export function mostThatStays(
  rig: Rig,
  cost: (id: FixtureId) => number,
): { readonly most: number; readonly movable: number } {
  const groups = groupsOf(rig, cost);
  const taken = new Set(groups.filter(({ fixed }) => fixed === 'fixed').flatMap(({ slots }) => [...slots]));
  const able = groups.filter(
    ({ fixed, whole, slots }) => fixed === 'free' && whole === 'whole' && ![...slots].some((slot) => taken.has(slot)),
  );
  const meets = able.map((one) =>
    able.map((other) => one !== other && [...one.slots].some((at) => other.slots.has(at))),
  );
  let best = 0;
  for (let set = 0; set < 2 ** able.length; set++) {
    const chosen = able.map((_, at) => at).filter((at) => (set >>> at) & 1);
    if (chosen.some((one) => chosen.some((other) => meets[one]?.[other]))) continue;
    best = Math.max(
      best,
      chosen.reduce((total, at) => total + (able[at]?.cost ?? 0), 0),
    );
  }
  const free = groups.filter(({ fixed }) => fixed === 'free');
  return { most: best, movable: free.reduce((total, group) => total + group.cost, 0) };
}

function groupsOf(rig: Rig, cost: (id: FixtureId) => number): readonly Group[] {
  const groups: FixtureId[][] = [];
  for (const id of idsOf(rig)) {
    if (slotsOf(rig, id).length === 0) continue;
    const group = groups.find(([one]) => one !== undefined && areOne(rig, one, id));
    if (group === undefined) groups.push([id]);
    else group.push(id);
  }
  return groups.map((ids) => {
    const [lead] = ids as [FixtureId];
    const list = slotsOf(rig, lead);
    const slots = new Set(list);
    const fixture = getRow(rig.fixtures, lead);
    const mode = fixture && modeOf(rig, fixture);
    const isOver = fixture !== undefined && slotRuns(rig, fixture).some(({ over }) => over > 0);
    const isFixed =
      mode === undefined ||
      mode.footprints.some((each) => each > 512) ||
      ids.some((id) => (getRow(rig.fixtures, id)?.lock ?? '') !== '');
    return {
      ids,
      slots,
      fixed: isFixed ? 'fixed' : 'free',
      whole: slots.size < list.length || isOver ? 'broken' : 'whole',
      cost: ids.reduce((total, id) => total + cost(id), 0),
    };
  });
}

function areOne(rig: Rig, a: FixtureId, b: FixtureId): boolean {
  const [one, other] = [getRow(rig.fixtures, a), getRow(rig.fixtures, b)];
  if (one === undefined || other === undefined) return false;
  const sharer = (fixture: typeof one) => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });
  return actAsOne(sharer(one), sharer(other));
}
