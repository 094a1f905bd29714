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
}
