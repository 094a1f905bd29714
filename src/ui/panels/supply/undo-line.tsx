import { useSyncExternalStore } from 'react';
import { PLAN_NAMES } from '#words/plans.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { Scene } from './scene.ts';

/** Takes back my latest step, on whichever page I made it; nothing while there is none. */
export function UndoLine({ scene: { store, writable } }: { readonly scene: Scene }) {
  const next = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  if (next === undefined || writable === 'no') return null;
  return (
    <p>
      <LinkButton onClick={() => store.undo()}>{words.undo(PLAN_NAMES[next])}</LinkButton>
    </p>
  );
}
