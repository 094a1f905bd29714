import { refuse } from '#base/result.ts';
import type { LocalCopy } from '#ui/live/sync/local-copy.ts';

/** A device that keeps nothing: a page on it has only what the server has. */
export const noCopy: LocalCopy = {
  load: async () => refuse('missing'),
  write: async () => refuse('missing'),
  close: () => undefined,
};
