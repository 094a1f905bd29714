import { useState } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { LOCK_WORDS } from '#words/locks.ts';
import { lockStates, setLocks } from '../../../grid/lock-selected.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { Button } from '../../../kit/button.tsx';
import { TextField } from '../../../kit/text-field.tsx';
import { useMyName } from '../../../live/my-name.ts';
import { useCalmRig } from '../../../live/use-calm-rig.ts';

export interface LockSectionProps {
  readonly sheet: Sheet;
  readonly rows: readonly FixtureId[];
}

/** Locks the selected units with a reason, and unlocks them. */
export function LockSection({ sheet, rows }: LockSectionProps) {
  useCalmRig(sheet.store);
  const name = useMyName();
  const [typed, setTyped] = useState<string>();
  const { locked, free } = lockStates(sheet, rows);
  const reason = typed ?? name;
  return (
    <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
      <h3>{LOCK_WORDS.title}</h3>
      <p className="text-soft">{LOCK_WORDS.about}</p>
      <TextField label={LOCK_WORDS.reason} hint={LOCK_WORDS.reasonHint} value={reason} onText={setTyped} />
      <div className="flex flex-wrap gap-2">
        <Button disabled={free === 0 || reason.trim() === ''} onClick={() => setLocks(sheet, 'locked', reason)}>
          {LOCK_WORDS.lock(free)}
        </Button>
        <Button disabled={locked === 0} onClick={() => setLocks(sheet, 'unlocked', '')}>
          {LOCK_WORDS.unlock(locked)}
        </Button>
      </div>
    </section>
  );
}
