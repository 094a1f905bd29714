import type { Result } from '#base/result.ts';
import type { ArchiveRefusal } from '#engine/type/file-refusal.ts';

/** Everything an archive may at most be. Sizes are counted on the bytes that really come out, not on what it says of itself. */
export interface ArchiveLimits {
  /** Bytes of the archive itself. */
  readonly bytes: number;
  readonly entries: number;
  /** Bytes of one unpacked entry. */
  readonly entryBytes: number;
  /** Bytes of all unpacked entries together. */
  readonly totalBytes: number;
  /** Archives within archives: 0 for one that stands alone. */
  readonly nesting: number;
}

export interface Unpacking {
  readonly limits: ArchiveLimits;
  /** How many archives this one is within. */
  readonly nesting: number;
  /** Which entries to unpack, by full name; the others cost nothing. */
  readonly wants: (name: string) => boolean;
}

export interface Unpacked {
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** Names of the entries that were not asked for. */
  readonly others: readonly string[];
}

/** Unpacks what is wanted of an archive. Never throws for what is in it. How is handed in: see the README. */
export type Unpack = (bytes: Uint8Array, unpacking: Unpacking) => Promise<Result<Unpacked, ArchiveRefusal>>;
