import type * as Y from 'yjs';

/** The version of a draft's document that this code writes. Every change of what is stored raises it. */
export const DRAFT_FORMAT = 1;

export const DRAFT_MAP_NAMES = ['meta', 'cells'] as const;

/** The two maps of a draft's document. */
export function draftMapsOf(doc: Y.Doc): Record<(typeof DRAFT_MAP_NAMES)[number], Y.Map<unknown>> {
  return { meta: doc.getMap('meta'), cells: doc.getMap('cells') };
}

/** What a document says it is: `none` is no draft, or one that has not arrived yet; `newer` was written by a later version. */
export type DraftFormat = 'current' | 'newer' | 'none';

export function draftFormatOf(doc: Y.Doc): DraftFormat {
  const format = draftMapsOf(doc).meta.get('format');
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1) return 'none';
  return format > DRAFT_FORMAT ? 'newer' : 'current';
}
