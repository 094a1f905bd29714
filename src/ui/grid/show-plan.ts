import { ok, type Result } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { clearClash } from '#engine/patch/clear-clash.ts';
import { seriesPlan } from '#engine/patch/fill-plans.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { panelFor } from './panel-for.ts';
import { isWritable } from './plans/write-cells.ts';
import type { Previewed, Sheet } from './sheet.ts';
import { selectedBlock } from './sheet-actions.ts';

/** Shows a plan before it is applied, or says why there is none. */
export function showPlan(sheet: Sheet, plan: Result<Plan, PlanRefusal>): void {
  showTold(sheet, plan.ok ? ok({ plan: plan.value, says: [], costs: undefined }) : plan);
}

/** The same for a plan that has something to say of itself. */
export function showTold(sheet: Sheet, told: Result<Previewed, PlanRefusal>): void {
  if (!sheet.store.canEdit()) sheet.set({ notice: { kind: 'refused', refusal: { code: 'read-only' } } });
  else if (told.ok) sheet.set({ preview: told.value, notice: undefined });
  else sheet.set({ notice: { kind: 'no-plan', refusal: told.error } });
}

/** Shows the series that goes on from the first selected row. */
export function showSeries(sheet: Sheet): void {
  const { rows, columns } = selectedBlock(sheet);
  showPlan(sheet, seriesPlan(sheet.store.rig(), rows, columns.filter(isWritable)));
}

/**
 * Shows the first thing that clears a finding of a row: a plan, or the panel where it is dealt with, or which locks hold it;
 * false when no finding of it has one.
 */
export function showClearing(sheet: Sheet, row: FixtureId): boolean {
  const { store } = sheet;
  if (getRow(store.rig().fixtures, row) === undefined) return false;
  for (const finding of store.findingsOf(row)) {
    const panel = panelFor(finding);
    if (panel !== undefined) {
      sheet.set({ panel });
      return true;
    }
    const plan = clearClash(store.rig(), finding, store.occupancy());
    if (!plan.ok && plan.error.code !== 'held' && plan.error.code !== 'locked') continue;
    showPlan(sheet, plan);
    return true;
  }
  return false;
}
