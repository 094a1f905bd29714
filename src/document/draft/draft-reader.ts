import type * as Y from 'yjs';
import type { Draft } from '#engine/draft/draft.ts';
import { createDraftIndex } from './draft-index.ts';
import { draftMapsOf } from './draft-maps.ts';

/** Reads a document as a draft. Total: any content at all is read, what makes no sense is passed over. */
export function readDraft(doc: Y.Doc): Draft {
  return createDraftIndex(draftMapsOf(doc).cells.entries()).draft();
}

export interface DraftReader {
  /** The draft as of the last finished transaction. The same object until one changes what it reads as. */
  draft(): Draft;
  /** Calls `listen` once after each transaction that changed the reading; the answer stops it. */
  onChange(listen: () => void): () => void;
  close(): void;
}

/** Reads a document and keeps the reading up. Modes and rows that did not change stay the same objects. */
export function watchDraft(doc: Y.Doc): DraftReader {
  const { cells } = draftMapsOf(doc);
  const index = createDraftIndex(cells.entries());
  const listeners = new Set<() => void>();
  let draft = index.draft();
  const follow = ({ keysChanged }: Y.YMapEvent<unknown>) => {
    for (const key of keysChanged) index.take(key, cells.get(key));
    const now = index.draft();
    if (now === draft) return;
    draft = now;
    for (const listen of [...listeners]) listen();
  };
  cells.observe(follow);
  return {
    draft: () => draft,
    onChange(listen) {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    close() {
      cells.unobserve(follow);
      listeners.clear();
    },
  };
}
