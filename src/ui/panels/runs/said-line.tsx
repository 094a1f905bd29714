import { useSyncExternalStore } from 'react';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import type { Said } from './run-desk.ts';

export interface SaidLineProps {
  readonly store: RigStore;
  readonly said: Said | undefined;
  readonly onUndo: () => void;
}

/** Under the runs: what came of the last step, and the way back. */
export function SaidLine({ store, said, onUndo }: SaidLineProps) {
  const mine = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  return (
    <div className="flex min-h-8 shrink-0 flex-wrap items-baseline gap-x-4 border-t border-ink px-4 py-1 sm:px-5">
      <p role="status">{said?.text ?? ''}</p>
      {said?.did === 'step' && mine === 'set-run' ? <LinkButton onClick={onUndo}>{words.undo}</LinkButton> : null}
      <p className="text-small text-soft touch:hidden max-sm:hidden">{words.hint}</p>
    </div>
  );
}
