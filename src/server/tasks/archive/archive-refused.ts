import type { ArchiveRefusal } from '#engine/type/file-refusal.ts';
import type { ArchiveFault } from '#wire/crew-archive.ts';
import type { Refusal } from '#wire/refusal.ts';

/** Why an archive is not brought in. */
export type ArchiveTrouble = ArchiveRefusal | ArchiveFault | { readonly code: Refusal };

/** Thrown wherever an archive turns out to be none of ours, and caught by `bringIn`, which makes an answer of it: it is no bug. */
export class ArchiveRefused extends Error {
  constructor(readonly trouble: ArchiveTrouble) {
    super(`an archive was refused: ${JSON.stringify(trouble)}`);
  }
}

export const unreadable = (part: string): ArchiveRefused => new ArchiveRefused({ code: 'part-unreadable', part });
