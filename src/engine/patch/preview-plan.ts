import { differingRows } from '#base/table.ts';
import { type Checker, createChecker } from '../check/checker.ts';
import { compareFindings } from '../check/compare-findings.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Plan } from '../model/edit.ts';
import { type CellValue, FIELDS, type Field } from '../model/field.ts';
import type { Finding } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import { cellOf } from '../model/read-fixture.ts';
import type { Rig } from '../model/rig.ts';

/** What one cell held and would hold. */
export interface CellChange {
  readonly fixture: FixtureId;
  readonly field: Field;
  readonly from: CellValue;
  readonly to: CellValue;
}

/** What a plan would do, without doing it. */
export interface PlanPreview {
  readonly rig: Rig;
  /** Cells of fixtures that are there before and after, by fixture id, then in the order of the fields. */
  readonly changes: readonly CellChange[];
  readonly fixturesAdded: readonly FixtureId[];
  readonly fixturesRemoved: readonly FixtureId[];
  readonly findingsAdded: readonly Finding[];
  readonly findingsRemoved: readonly Finding[];
}

/**
 * Shows what a plan would do to a rig. [PL13] A checker that stands at `rig` makes it cost what the plan changes; it is
 * taken to the rig after and back.
 */
export function previewPlan(rig: Rig, plan: Plan, checker: Checker = createChecker(rig)): PlanPreview {
  if (checker.rig !== rig) throw new Error('the checker of a preview stands at another rig');
  const after = applyEdits(rig, plan.edits);
  const { added, removed } = checker.update(after);
  checker.update(rig);
  const rows = differingRows(rig.fixtures, after.fixtures).sort((a, b) => (a.id < b.id ? -1 : 1));
  return {
    rig: after,
    changes: rows.flatMap(({ before, after: now }) => {
      if (before === undefined || now === undefined) return [];
      return FIELDS.filter((field) => cellOf(before, field) !== cellOf(now, field)).map((field) => ({
        fixture: before.id,
        field,
        from: cellOf(before, field),
        to: cellOf(now, field),
      }));
    }),
    fixturesAdded: rows.flatMap(({ before, after: now }) => (before === undefined && now ? [now.id] : [])),
    fixturesRemoved: rows.flatMap(({ before, after: now }) => (now === undefined && before ? [before.id] : [])),
    findingsAdded: [...added].sort(compareFindings),
    findingsRemoved: [...removed].sort(compareFindings),
  };
}
