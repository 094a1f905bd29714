import * as Y from 'yjs';
import type { DraftEdit } from '#engine/draft/draft.ts';
import { applyDraftEdits, DRAFT_EDIT_LIMIT } from './apply-draft-edits.ts';
import { DRAFT_FORMAT, draftMapsOf } from './draft-maps.ts';

/**
 * A new draft that says what `edits` make of an empty one. Made once per draft, where the draft is made; everybody else
 * receives it. There may be any number of edits. Throws when one breaks a limit: they are made by us, never typed.
 */
export function createDraftDoc(edits: readonly DraftEdit[] = []): Y.Doc {
  const doc = new Y.Doc();
  draftMapsOf(doc).meta.set('format', DRAFT_FORMAT);
  for (let from = 0; from < edits.length; from += DRAFT_EDIT_LIMIT) {
    const made = applyDraftEdits(doc, edits.slice(from, from + DRAFT_EDIT_LIMIT), 'create');
    if (!made.ok) throw new Error(`not the edits of a draft: ${JSON.stringify(made.error)}`);
  }
  return doc;
}
