import { getRow } from '#base/table.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { lockPlan, unlockPlan } from '#engine/patch/lock-plan.ts';
import type { Sheet } from './sheet.ts';
import { carryOutResult, selectedBlock } from './sheet-actions.ts';

/** Locks the selected units that are not locked, with a reason; unlocks them where all are locked. */
export function lockSelected(sheet: Sheet, reason: string): void {
  const { free } = lockStates(sheet, selectedBlock(sheet).rows);
  setLocks(sheet, free === 0 ? 'unlocked' : 'locked', reason);
}

/** Locks or unlocks the selected units, and says how many that were. */
export function setLocks(sheet: Sheet, way: 'locked' | 'unlocked', reason: string): void {
  const { rows } = selectedBlock(sheet);
  const rig = sheet.store.rig();
  const made = way === 'locked' ? lockPlan(rig, rows, reason) : unlockPlan(rig, rows);
  if (!carryOutResult(sheet, made) || !made.ok) return;
  sheet.set({ notice: { kind: 'locks', way, units: made.value.edits.length } });
}

/** How many of the rows are locked, and how many are not. */
export function lockStates(
  sheet: Sheet,
  rows: readonly FixtureId[],
): { readonly locked: number; readonly free: number } {
  const { fixtures } = sheet.store.rig();
  const locked = rows.filter((id) => {
    const fixture = getRow(fixtures, id);
    return fixture !== undefined && isLocked(fixture);
  }).length;
  return { locked, free: rows.length - locked };
}
