import * as Y from 'yjs';
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

/** The history of what is written into a draft with `origin`. What others wrote is never taken back. */
export function createDraftHistory(doc: Y.Doc, origin: unknown): DraftHistory {
  const manager = new Y.UndoManager(draftMapsOf(doc).cells, { captureTimeout: 0, trackedOrigins: new Set([origin]) });
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listen of [...listeners]) listen();
  };
  manager.on('stack-item-added', tell);
  manager.on('stack-item-popped', tell);
  manager.on('stack-cleared', tell);
  return {
    undo: () => manager.undo() !== null,
    redo: () => manager.redo() !== null,
    canUndo: () => manager.canUndo(),
    canRedo: () => manager.canRedo(),
    onChange(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      manager.destroy();
      listeners.clear();
    },
  };
}
