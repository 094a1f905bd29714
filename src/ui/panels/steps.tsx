import { useEffect, useState, useSyncExternalStore } from 'react';
import type { PlanName } from '#engine/model/edit.ts';
import { NOTICE_WORDS, SHEET_WORDS } from '#words/sheet.ts';
import { LinkButton } from '../kit/link-button.tsx';
import type { RigStore } from '../live/rig-store.ts';

/** A step of mine that was taken back or done again. */
interface StepBack {
  readonly way: 'undo' | 'redo';
  readonly plan: PlanName | undefined;
}

/** My own steps, to take back and do again, by their words or their keys, and what became of the last. */
export function Steps({ store }: { readonly store: RigStore }) {
  const [last, setLast] = useState<StepBack>();
  useStepKeys(store, setLast);
  const undo = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const redo = useSyncExternalStore(store.subscribeHistory, store.nextRedo);
  return (
    <div className="flex flex-wrap items-baseline gap-x-4">
      <LinkButton disabled={undo === undefined} onClick={() => setLast(stepBack(store, 'undo'))}>
        {SHEET_WORDS.undo}
      </LinkButton>
      {redo === undefined ? null : (
        <LinkButton onClick={() => setLast(stepBack(store, 'redo'))}>{SHEET_WORDS.redo}</LinkButton>
      )}
      <p role="status" className="text-soft">
        {last === undefined ? '' : sentenceOf(last)}
      </p>
    </div>
  );
}

const stepBack = (store: RigStore, way: StepBack['way']): StepBack => ({
  way,
  plan: way === 'undo' ? store.undo() : store.redo(),
});

function sentenceOf({ way, plan }: StepBack): string {
  if (way === 'undo') return plan === undefined ? NOTICE_WORDS.nothingToUndo : NOTICE_WORDS.undone(plan);
  return plan === undefined ? NOTICE_WORDS.nothingToRedo : NOTICE_WORDS.redone(plan);
}

/** The keys that take a step back or do it again, wherever one is on the page. */
function useStepKeys(store: RigStore, onStep: (last: StepBack) => void): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const way = wayOf(event);
      if (way === undefined || !store.canEdit() || isTyping(event.target)) return;
      event.preventDefault();
      onStep(stepBack(store, way));
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [store, onStep]);
}

function wayOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): StepBack['way'] | undefined {
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  if (key.toLowerCase() === 'z') return shiftKey ? 'redo' : 'undo';
  return key.toLowerCase() === 'y' ? 'redo' : undefined;
}

/** Whether a field holds text that is not written yet: its own keys take that back. */
const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLInputElement && (target.dataset.typed !== undefined || target.closest('dialog') !== null);
