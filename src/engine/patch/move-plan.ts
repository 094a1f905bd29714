import { type Result, refuse } from '#base/result.ts';
import { type Absolute, isAbsolute } from '../model/address.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { addressEdits, chosen, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** By so many slots, down when negative; or so that the lowest start address of all lands on `to`. */
export type Move = { readonly by: number } | { readonly to: Absolute };

/**
 * Moves fixtures and keeps their distances. Those without an address stay so. Clashes it makes are for the preview to
 * show; only an address that does not exist is refused. [PL3]
 */
export function movePlan(rig: Rig, ids: readonly FixtureId[], move: Move): Result<Plan, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const starts = fixtures.value.flatMap((fixture) => fixture.addresses.filter((address) => address !== null));
  if (starts.length === 0) return refuse({ code: 'not-patched' });
  const by = 'by' in move ? move.by : move.to - Math.min(...starts);
  if (!Number.isInteger(by)) return refuse({ code: 'bad-number', value: by });
  const edits: Edit[] = [];
  for (const fixture of fixtures.value) {
    const outside = firstOutside(fixture, by);
    if (outside !== undefined) return refuse(outside);
    edits.push(...shiftEdits(fixture, by));
  }
  return planOf(rig, 'move', edits);
}

function shiftEdits(fixture: Fixture, by: number): readonly Edit[] {
  if (fixture.addresses.length === 0) return [];
  return addressEdits(
    fixture,
    fixture.addresses.map((address) => (address === null ? null : address + by)),
  );
}

function firstOutside(fixture: Fixture, by: number): PlanRefusal | undefined {
  for (const [part, field] of ADDRESS_FIELDS.entries()) {
    const value = (fixture.addresses[part] ?? 1 - by) + by;
    if (!isAbsolute(value)) return { code: 'out-of-range', fixture: fixture.id, field, value };
  }
  return undefined;
}
