import { type Result, refuse } from '#base/result.ts';
import { type Absolute, SLOTS, slotOf } from '../model/address.ts';
import type { Plan } from '../model/edit.ts';
import { modeOf } from '../model/find-mode.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { addressEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Puts a fixture at `start`, its breaks end to end, as `freeRoom` suggests. Says nothing of who sits there. [PL2] */
export function takeRoomPlan(rig: Rig, id: FixtureId, start: Absolute): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, [id]);
  if (!fixtures.ok) return fixtures;
  const [fixture] = fixtures.value;
  const mode = fixture === undefined ? undefined : modeOf(rig, fixture);
  if (fixture === undefined || mode === undefined) return refuse({ code: 'mode-unknown', fixture: id });
  let next: number = start;
  const addresses = mode.footprints.map((footprint) => {
    const address = next;
    next += footprint;
    return footprint === 0 ? null : address;
  });
  const over = slotOf(start) + (next - start) - 1 - SLOTS;
  if (over > 0) return refuse({ code: 'crosses-end', fixture: id, over });
  return planOf(rig, 'move', addressEdits(fixture, addresses));
}
