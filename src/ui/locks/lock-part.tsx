import { useState, useSyncExternalStore } from 'react';
import type { Result } from '#base/result.ts';
import type { Plan } from '#engine/model/edit.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import { lockPlan, unlockPlan } from '#engine/patch/lock-plan.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { LOCK_WORDS } from '#words/locks.ts';
import { useRow } from '../grid/use-sheet.ts';
import { LinkButton } from '../kit/link-button.tsx';
import { useMyName } from '../live/my-name.ts';
import type { RigStore } from '../live/rig-store.ts';
import { carryOutPlan } from '../workspace/carry-out-plan.ts';
import { LockMark } from './lock-mark.tsx';

export interface LockPartProps {
  readonly store: RigStore;
  readonly id: FixtureId;
}

/** Whether one unit is locked and why, and one press to change that: locked in my name. */
export function LockPart({ store, id }: LockPartProps) {
  const row = useRow(store, id);
  const writable = useSyncExternalStore(store.subscribeLink, store.canEdit);
  const name = useMyName();
  const [trouble, setTrouble] = useState('');
  if (row === undefined) return null;
  const { lock } = row.fixture;
  const locked = isLocked(row.fixture);
  if (!locked && !writable) return null;
  const carryOut = (plan: Result<Plan, PlanRefusal>) => setTrouble(carryOutPlan(store, plan) ?? '');
  return (
    <div>
      <p className="flex flex-wrap items-center gap-x-3">
        {locked ? (
          <span>
            <LockMark reason={lock} className="mr-1" />
            {LOCK_WORDS.is(lock.trim())}
          </span>
        ) : null}
        {!writable ? null : locked ? (
          <LinkButton onClick={() => carryOut(unlockPlan(store.rig(), [id]))}>{LOCK_WORDS.unlockOne}</LinkButton>
        ) : (
          <LinkButton onClick={() => carryOut(lockPlan(store.rig(), [id], name || LOCK_WORDS.somebody))}>
            {LOCK_WORDS.lockOne}
          </LinkButton>
        )}
      </p>
      <p role="status">{trouble}</p>
    </div>
  );
}
