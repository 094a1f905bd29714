import { useSyncExternalStore } from 'react';
import type { PlanName } from '#engine/model/edit.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { NOTICE_WORDS } from '#words/sheet.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';

/** A step of mine that was taken back or done again. */
export interface StepBack {
  readonly way: 'undo' | 'redo';
  readonly plan: PlanName | undefined;
}

/** Takes back my latest step, or does it again. */
export const stepBack = (store: RigStore, way: StepBack['way']): StepBack => ({
  way,
  plan: way === 'undo' ? store.undo() : store.redo(),
});

export interface StepsProps {
  readonly store: RigStore;
  readonly last: StepBack | undefined;
  readonly onStep: (way: StepBack['way']) => void;
}

/** My own steps, to take back and do again, and what became of the last. */
export function Steps({ store, last, onStep }: StepsProps) {
  const undo = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const redo = useSyncExternalStore(store.subscribeHistory, store.nextRedo);
  return (
    <div className="flex flex-wrap items-baseline gap-x-4">
      <LinkButton disabled={undo === undefined} onClick={() => onStep('undo')}>
        {words.undo}
      </LinkButton>
      {redo === undefined ? null : <LinkButton onClick={() => onStep('redo')}>{words.redo}</LinkButton>}
      <p role="status" className="text-soft">
        {last === undefined ? '' : sentenceOf(last)}
      </p>
    </div>
  );
}

function sentenceOf({ way, plan }: StepBack): string {
  if (way === 'undo') return plan === undefined ? NOTICE_WORDS.nothingToUndo : NOTICE_WORDS.undone(plan);
  return plan === undefined ? NOTICE_WORDS.nothingToRedo : NOTICE_WORDS.redone(plan);
}
