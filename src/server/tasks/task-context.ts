import type * as Y from 'yjs';
import type { Clock } from '#base/clock.ts';
import type { MakeId } from '#base/random-id.ts';
import type { Revoke } from '../access/revocation.ts';
import type { Store } from '../db/store.ts';
import type { RecordWorkers } from '../record/record-workers.ts';
import type { StoredRig } from '../stored/stored-rig.ts';

/** What a task is handed: the store, and every effect it has on the world outside it. */
export interface TaskContext {
  readonly store: Store;
  readonly clock: Clock;
  readonly makeId: MakeId;
  readonly revoke: Revoke;
  readonly record: RecordWorkers;
  /** The rows of a rig's log, as committed, without making a document of them. Undefined when there is no such rig. */
  readonly readRigRows: (rigId: string) => Promise<StoredRig | undefined>;
  /** Read a rig or a draft as the log has it now. */
  readonly readRigDoc: ReadDoc;
  readonly readDraftDoc: ReadDoc;
}

/**
 * Hands `use` a document as committed, and the sequence number it stands at. `use` must not write to it nor keep it. Undefined when
 * there is no such document.
 */
type ReadDoc = <T>(id: string, use: (doc: Y.Doc, seq: number) => T) => Promise<T | undefined>;
