import type * as Y from 'yjs';
import type { PlanName } from '#engine/model/edit.ts';
import { planNameOf } from '../edit/apply-plan.ts';
import { mapsOf } from '../schema/rig-doc.ts';
import { createForeignWrites } from './foreign-writes.ts';
import { captureStep, type Step, takeBack } from './step.ts';

/** Undo and redo of what was done here, one plan at a time. */
export interface History {
  /** Takes back the latest plan of mine of which anything is left to take back, and answers with its name. */
  undo(): PlanName | undefined;
  redo(): PlanName | undefined;
  canUndo(): boolean;
  canRedo(): boolean;
  /** The name of the plan that `undo` looks at first. */
  nextUndo(): PlanName | undefined;
  nextRedo(): PlanName | undefined;
  onChange(listen: () => void): () => void;
  close(): void;
}

const REVERSAL = Symbol('reversal');

interface Reversal {
  readonly name: PlanName;
  readonly onto: 'undo' | 'redo';
}

/**
 * The history of the plans applied to a document with `origin`. Taking a plan back writes, under every key it wrote, what
 * stood there before, except where somebody else has written since: theirs stays. A row that somebody else has written to
 * since is not taken away. What is taken back is written with the same origin.
 *
 * (The undo manager of Yjs is not used: when two people write one cell at once and mine wins, its undo brings back neither
 * what stood there before nor theirs, and the cell falls back to what its row was first entered with.)
 */
export function createHistory(doc: Y.Doc, origin: unknown): History {
  const maps = mapsOf(doc);
  const foreign = createForeignWrites();
  const stacks: Record<'undo' | 'redo', Step[]> = { undo: [], redo: [] };
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listen of [...listeners]) listen();
  };

  const follow = (transaction: Y.Transaction) => {
    const reversal: Reversal | undefined = transaction.meta.get(REVERSAL);
    const name = reversal?.name ?? planNameOf(transaction);
    if (transaction.origin !== origin || name === undefined) return foreign.note(maps, transaction);
    const step = captureStep(maps, transaction, name, foreign.now());
    if (step.entries.length === 0) return;
    foreign.watch(step);
    stacks[reversal?.onto ?? 'undo'].push(step);
    if (reversal === undefined) stacks.redo = [];
    tell();
  };
  doc.on('afterTransaction', follow);

  const reverse = (from: 'undo' | 'redo'): PlanName | undefined => {
    const onto = from === 'undo' ? 'redo' : 'undo';
    for (let step = stacks[from].pop(); step !== undefined; step = stacks[from].pop()) {
      const writes = takeBack(maps, step, (place, since) => foreign.isSince(place, since));
      if (writes.length === 0) continue;
      const reversal: Reversal = { name: step.name, onto };
      doc.transact((transaction) => {
        transaction.meta.set(REVERSAL, reversal);
        for (const write of writes) write();
      }, origin);
      return step.name;
    }
    tell();
    return undefined;
  };

  return {
    undo: () => reverse('undo'),
    redo: () => reverse('redo'),
    canUndo: () => stacks.undo.length > 0,
    canRedo: () => stacks.redo.length > 0,
    nextUndo: () => stacks.undo.at(-1)?.name,
    nextRedo: () => stacks.redo.at(-1)?.name,
    onChange(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      doc.off('afterTransaction', follow);
      listeners.clear();
    },
  };
}
