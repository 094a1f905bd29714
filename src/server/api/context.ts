import type { Me } from '#wire/me.ts';
import type { TaskContext } from '../tasks/task-context.ts';

/** What one request to the API knows: who asks, over what kind of connection, and what the tasks need. */
export interface ApiContext extends TaskContext {
  readonly user: Me['user'];
  readonly demo: boolean;
  readonly secure: boolean;
}
