import type { TypeTrouble } from './type-troubles.ts';

/** Why an archive was not unpacked. `entry` is a name as the archive spells it. */
export type ArchiveRefusal =
  | { readonly code: 'archive-empty' }
  | { readonly code: 'archive-too-large'; readonly bytes: number; readonly limit: number }
  | { readonly code: 'archive-nested'; readonly limit: number }
  | { readonly code: 'not-an-archive' }
  | { readonly code: 'archive-truncated' }
  | { readonly code: 'archive-damaged'; readonly entry: string | null }
  | { readonly code: 'too-many-entries'; readonly entries: number; readonly limit: number }
  | { readonly code: 'path-outside'; readonly entry: string }
  | { readonly code: 'named-twice'; readonly entry: string }
  | { readonly code: 'encrypted'; readonly entry: string }
  | { readonly code: 'compression-method'; readonly entry: string; readonly method: string }
  | { readonly code: 'entry-too-large'; readonly entry: string; readonly limit: number }
  | { readonly code: 'total-too-large'; readonly limit: number }
  | { readonly code: 'size-untrue'; readonly entry: string; readonly said: number };

/** Why the XML of a file was not read; lines are 1-based. */
export type XmlRefusal =
  | { readonly code: 'xml-broken'; readonly line: number; readonly what: string }
  | { readonly code: 'xml-doctype'; readonly line: number }
  | { readonly code: 'xml-too-deep'; readonly line: number; readonly limit: number }
  | { readonly code: 'xml-too-many'; readonly line: number; readonly limit: number };

/** Why no fixture type was found in it. */
export type DescriptionRefusal =
  | { readonly code: 'no-description' }
  | { readonly code: 'not-gdtf'; readonly root: string }
  /** `modes` were read, and none of them has slots that are one channel's each; `trouble` is what is wrong with the first. */
  | { readonly code: 'no-usable-mode'; readonly modes: number; readonly trouble: TypeTrouble | null };

export type GdtfRefusal = ArchiveRefusal | XmlRefusal | DescriptionRefusal;
