import * as Y from 'yjs';
import { heldBy, keyChanges } from '../read/key-changes.ts';
import { parseDraftCellKey } from './draft-cell.ts';
import { draftMapsOf } from './draft-maps.ts';

/** Undo and redo of what was written here, one `applyDraftEdits` at a time. */
export interface DraftHistory {
  /** Takes back the latest step of mine of which anything is left to take back; false when there is none. */
  undo(): boolean;
  redo(): boolean;
  canUndo(): boolean;
  canRedo(): boolean;
  /** Calls `listen` whenever any of the answers above may have changed; the answer stops it. */
  onChange(listen: () => void): () => void;
  close(): void;
}

/** What a step did to one cell; undefined stands for an empty one. */
interface Entry {
  readonly key: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** What one call wrote, and when: `at` counts the transactions of others before it. */
interface Step {
  readonly at: number;
  readonly entries: readonly Entry[];
}

const REVERSAL = Symbol('reversal');

/**
 * The history of what is written into a draft with `origin`. What others wrote since is never taken back, and a row, repeat
 * or mode that others have written into since it was added is not taken away.
 *
 * (The undo manager of Yjs is not used: after two people write one cell at once its undo leaves the cell empty, and a row
 * whose `order` is empty is gone.)
 */
export function createDraftHistory(doc: Y.Doc, origin: unknown): DraftHistory {
  const { cells } = draftMapsOf(doc);
  const others = createOthers();
  const stacks: Record<'undo' | 'redo', Step[]> = { undo: [], redo: [] };
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listen of [...listeners]) listen();
  };
  const follow = (transaction: Y.Transaction) => {
    const changes = keyChanges(transaction, cells);
    if (transaction.origin !== origin) return others.note(changes.map((change) => change.key));
    if (changes.length === 0) return;
    const entries = changes.map(({ key, before, after }) => ({ key, before: plain(before), after: plain(after) }));
    const onto: 'undo' | 'redo' | undefined = transaction.meta.get(REVERSAL);
    stacks[onto ?? 'undo'].push({ at: others.now(), entries });
    if (onto === undefined) stacks.redo = [];
    tell();
  };
  doc.on('afterTransaction', follow);
  const reverse = (from: 'undo' | 'redo'): boolean => {
    for (let step = stacks[from].pop(); step !== undefined; step = stacks[from].pop()) {
      const back = entriesToTakeBack(step, others).filter((entry) => cells.get(entry.key) !== entry.before);
      if (back.length === 0) continue;
      doc.transact((transaction) => {
        transaction.meta.set(REVERSAL, from === 'undo' ? 'redo' : 'undo');
        for (const { key, before } of back) {
          if (before === undefined) cells.delete(key);
          else cells.set(key, before);
        }
      }, origin);
      return true;
    }
    tell();
    return false;
  };
  return {
    undo: () => reverse('undo'),
    redo: () => reverse('redo'),
    canUndo: () => stacks.undo.length > 0,
    canRedo: () => stacks.redo.length > 0,
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

/** A shared type that somebody hid under a key cannot be put back, and nobody reads it: it counts as empty. */
function plain(item: Y.Item | undefined): unknown {
  const held = heldBy(item);
  return held instanceof Y.AbstractType || held instanceof Y.Doc ? undefined : held;
}

interface Others {
  now(): number;
  note(keys: readonly string[]): void;
  /** Whether another has written under a key, or into a row, repeat or mode, since. */
  isSince(place: string, since: number): boolean;
}

/** Remembers when others wrote where. Time counts their transactions. */
function createOthers(): Others {
  let now = 0;
  const latest = new Map<string, number>();
  return {
    now: () => now,
    note(keys) {
      now += 1;
      for (const key of keys) for (const place of [key, ...ownersOf(key)]) latest.set(place, now);
    },
    isSince: (place, since) => (latest.get(place) ?? 0) > since,
  };
}

/** The row or repeat, and the mode, that a cell is in, the narrower first. */
function ownersOf(key: string): readonly string[] {
  const cell = parseDraftCellKey(key);
  if (cell === undefined || cell.of === 'facts') return [];
  const mode = `mode/${cell.mode}`;
  if (cell.of === 'mode') return [mode];
  return [cell.of === 'row' ? `row/${cell.mode}/${cell.row}` : `repeat/${cell.mode}/${cell.repeat}`, mode];
}

function entriesToTakeBack({ at, entries }: Step, others: Others): readonly Entry[] {
  const kept = new Set<string>();
  for (const { key, before } of entries) {
    const [owner] = ownersOf(key);
    const takesAway = before === undefined && owner !== undefined && /\/(order|count)$/.test(key);
    if (takesAway && others.isSince(owner, at)) kept.add(owner);
  }
  return entries.filter(({ key }) => !others.isSince(key, at) && !kept.has(ownersOf(key)[0] ?? ''));
}
