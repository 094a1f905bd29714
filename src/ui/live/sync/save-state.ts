import type { CopyTrouble } from './local-copy.ts';
import type { Entry } from './outbox.ts';
import type { SaveState } from './sync-state.ts';

/** Where my unacknowledged edits are. Says the weakest thing that is true of all of them. */
export function saveStateOf(what: {
  readonly entries: readonly Entry[];
  /** They are being sent: live, as a writer. */
  readonly goingOut: boolean;
  readonly copyTrouble: CopyTrouble | undefined;
}): SaveState {
  if (what.entries.length === 0) return 'saved';
  if (what.goingOut) return 'saving';
  if (what.entries.every((entry) => entry.key !== undefined)) return 'on-this-device';
  return what.copyTrouble ? 'only-in-this-page' : 'saving';
}
