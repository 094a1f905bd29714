import { constants, setPriority } from 'node:os';

/**
 * Lets this thread run behind all others: whoever edits a rig never waits for the processor because of it. Linux alone gives each thread a
 * priority of its own; elsewhere it would be that of the whole process, so that it stays as it is.
 */
export function runBehind(): void {
  if (process.platform === 'linux') setPriority(constants.priority.PRIORITY_LOW);
}
