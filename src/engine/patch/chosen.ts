import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import type { Edit, Plan, PlanName } from '../model/edit.ts';
import { ADDRESS_FIELDS, type CellValue, type Field } from '../model/field.ts';
import type { Fixture } from '../model/fixture.ts';
import type { FixtureId } from '../model/ids.ts';
import { lockedAgainst } from '../model/locked.ts';
import { cellOf } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** The fixtures of `ids`, in that order, each once. */
export function chosen(rig: Rig, ids: readonly FixtureId[]): Result<readonly Fixture[], PlanRefusal> {
  const fixtures: Fixture[] = [];
  for (const id of new Set(ids)) {
    const fixture = getRow(rig.fixtures, id);
    if (fixture === undefined) return refuse({ code: 'no-such-fixture', fixture: id });
    fixtures.push(fixture);
  }
  return fixtures.length === 0 ? refuse({ code: 'nothing-chosen' }) : ok(fixtures);
}

/** The plan of `edits`; refused when there are none, and when they would move a unit that is locked. [LK2] */
export function planOf(rig: Rig, name: PlanName, edits: readonly Edit[]): Result<Plan, PlanRefusal> {
  if (edits.length === 0) return refuse({ code: 'changes-nothing' });
  const fixture = lockedAgainst(rig, edits);
  return fixture === undefined ? ok({ name, edits }) : refuse({ code: 'locked', fixture });
}

/** The edit that makes a cell `value`, unless it is that already. */
export function cellEdits(fixture: Fixture, field: Field, value: CellValue): readonly Edit[] {
  return cellOf(fixture, field) === value ? [] : [{ kind: 'set-cell', fixture: fixture.id, field, value }];
}

/** The edits that give a fixture these start addresses, break 1 first, and no others. */
export function addressEdits(fixture: Fixture, addresses: readonly (number | null)[]): readonly Edit[] {
  return ADDRESS_FIELDS.flatMap((field, part) => cellEdits(fixture, field, addresses[part] ?? null));
}
