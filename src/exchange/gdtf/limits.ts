import type { ArchiveLimits } from '../archive/archive.ts';

/** Everything a `.gdtf` file may at most be. Only its description is unpacked, whatever pictures and models it carries. */
export const GDTF_LIMITS: ArchiveLimits & { readonly nodes: number; readonly depth: number } = {
  bytes: 128_000_000,
  entries: 5_000,
  entryBytes: 16_000_000,
  totalBytes: 32_000_000,
  nesting: 1,
  /** Elements of the description. */
  nodes: 500_000,
  /** Elements within elements. */
  depth: 64,
};
