import { type Result, refuse } from '#base/result.ts';
import type { Edit, Plan } from '../model/edit.ts';
import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, positionId } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import { LAST_CHANNEL } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';
import { compareRowOrder } from '../model/row-order.ts';
import { cellEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

export interface Numbering {
  readonly fixtures: readonly FixtureId[];
  readonly from: number;
  readonly step: number;
}

/** Numbers channels `from`, `from + step`, … in the order of `fixtures`. [PL5] */
export function renumberChannels(rig: Rig, { fixtures: ids, from, step }: Numbering): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const bad = [from, step].find((value) => !Number.isSafeInteger(value));
  if (bad !== undefined) return refuse({ code: 'bad-number', value: bad });
  const edits: Edit[] = [];
  for (const [at, fixture] of fixtures.value.entries()) {
    const value = from + at * step;
    if (value < 1 || value > LAST_CHANNEL) {
      return refuse({ code: 'out-of-range', fixture: fixture.id, field: 'channel', value });
    }
    edits.push(...cellEdits(fixture, 'channel', value));
  }
  return planOf(rig, 'renumber-channels', edits);
}

/**
 * Numbers units `from`, `from + step`, … along each position, in the natural order of the numbers they have; units
 * restart on each position (common practice). Fixtures without a position are a group of their own. [PL6]
 */
export function renumberUnits(rig: Rig, { fixtures: ids, from, step }: Numbering): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const bad = [from, step].find((value) => !Number.isSafeInteger(value) || value < 0);
  if (bad !== undefined || step === 0) return refuse({ code: 'bad-number', value: bad ?? step });
  const edits = [...alongPositions(fixtures.value).values()].flatMap((units) =>
    units.sort(compareUnits).flatMap((fixture, at) => cellEdits(fixture, 'unit', String(from + at * step))),
  );
  return planOf(rig, 'renumber-units', edits);
}

function alongPositions(fixtures: readonly Fixture[]): Map<string, Fixture[]> {
  const positions = new Map<string, Fixture[]>();
  for (const fixture of fixtures) {
    const key = positionId(fixture.position);
    const units = positions.get(key);
    if (units === undefined) positions.set(key, [fixture]);
    else units.push(fixture);
  }
  return positions;
}

/** Units without a number come last. */
function compareUnits(a: Fixture, b: Fixture): number {
  const byNone = Number(a.unit.trim() === '') - Number(b.unit.trim() === '');
  return byNone || compareNatural(a.unit, b.unit) || compareRowOrder(a, b);
}
