import type { ArchiveRefusal } from '../type/file-refusal.ts';

/** Why a file is no handover. `part` is the name of an entry of the archive. */
export type HandoverRefusal =
  | ArchiveRefusal
  | { readonly code: 'not-a-handover' }
  | { readonly code: 'newer-format'; readonly format: number }
  | { readonly code: 'part-missing'; readonly part: string }
  /** Its bytes are not those that its hash was made of. */
  | { readonly code: 'part-changed'; readonly part: string }
  /** The rig in it cannot be read; `newer`: a newer program wrote it. */
  | { readonly code: 'rig-unreadable'; readonly newer: boolean }
  /** Reading it takes more time or memory than any handover. */
  | { readonly code: 'too-much' };
