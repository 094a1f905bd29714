import type { ArchiveLimits } from '../archive/archive.ts';

/** Everything a handover file may at most be: a rig of 50,000 fixtures has about 8 MB of text, and a fifth of that in the file. */
export const HANDOVER_LIMITS: ArchiveLimits = {
  bytes: 64_000_000,
  entries: 100,
  entryBytes: 100_000_000,
  totalBytes: 200_000_000,
  nesting: 0,
};
