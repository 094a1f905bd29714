import { useMemo, useState, useSyncExternalStore } from 'react';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { tasksOf } from '#engine/diff/tasks.ts';
import type { Rig } from '#engine/model/rig.ts';
import { goBackPlan, lockedInTheWay } from '#engine/patch/go-back-plan.ts';
import { previewPlan } from '#engine/patch/preview-plan.ts';
import { MOMENT_WORDS as words } from '#words/history.ts';
import { heldNames } from '#words/plans.ts';
import { SHEET_WORDS } from '#words/sheet.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { Message } from '../../kit/message.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { carryOutPlan } from '../../workspace/carry-out-plan.ts';
import { WhatChanges } from '../../workspace/what-changes.tsx';
import { TaskLines } from './task-lines.tsx';

export interface GoBackDialogProps {
  readonly store: RigStore;
  /** The rig as it was. */
  readonly then: Rig;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** What going back would do, before it is done: what changes, which findings come and go, and which locked units stand in the way. */
export function GoBackDialog({ store, then, onClose, onDone }: GoBackDialogProps) {
  const now = useSyncExternalStore(store.subscribe, store.rig);
  const [refused, setRefused] = useState<string>();
  const { preview, rest, locked } = useMemo(() => {
    const edits = diffEdits(diffRigs(now, then));
    return {
      preview: previewPlan(now, { name: 'go-back', edits }),
      rest: tasksOf(now, then).rig,
      locked: lockedInTheWay(now, edits),
    };
  }, [now, then]);
  const apply = () => {
    const why = carryOutPlan(store, goBackPlan(store.rig(), then));
    if (why === undefined) onDone();
    else setRefused(why);
  };
  const answers = (
    <>
      <Button onClick={onClose}>{SHEET_WORDS.leave}</Button>
      <Button look="main" onClick={apply} disabled={locked.length > 0}>
        {words.apply}
      </Button>
    </>
  );
  return (
    <Dialog title={words.dialog} onClose={onClose} answers={answers}>
      <p>{words.dialogAbout}</p>
      {locked.length === 0 ? null : (
        <Message severity="blocker" said={{ what: words.locked(locked.length, heldNames(locked, now)) }} />
      )}
      {refused === undefined ? null : <Message severity="blocker" said={{ what: refused }} />}
      <WhatChanges before={now} preview={preview} />
      {rest.length === 0 ? null : <TaskLines tasks={{ units: [], rig: rest }} first={10} />}
    </Dialog>
  );
}
