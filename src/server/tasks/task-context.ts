import type * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import type { MakeId } from '#base/random-id.ts';
import type { Revoke } from '../access/revocation.ts';
import type { Store } from '../db/store.ts';

/** What a task is handed: the store, and every effect it has on the world outside it. */
export interface TaskContext {
  readonly store: Store;
  readonly clock: Clock;
  readonly makeId: MakeId;
  readonly revoke: Revoke;
  /** Read a rig or a draft as the log has it now. */
  readonly readRigDoc: ReadDoc;
  readonly readDraftDoc: ReadDoc;
}

/**
 * Hands `use` a document as committed, and the sequence number it stands at. `use` must not write to it nor keep it. Undefined when
 * there is no such document.
 */
type ReadDoc = <T>(id: string, use: (doc: Y.Doc, seq: number) => T) => Promise<T | undefined>;
