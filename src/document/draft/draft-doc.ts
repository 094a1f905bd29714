import * as Y from 'yjs';
import type { DraftEdit } from '#engine/draft/draft.ts';
import { applyDraftEdits } from './apply-draft-edits.ts';
import { DRAFT_FORMAT, draftMapsOf } from './draft-maps.ts';

/**
 * A new draft that says what `edits` make of an empty one. Made once per draft, where the draft is made; everybody else
 * receives it. Throws when an edit breaks a limit: they are made by us, never typed.
 */
export function createDraftDoc(edits: readonly DraftEdit[] = []): Y.Doc {
  const doc = new Y.Doc();
  draftMapsOf(doc).meta.set('format', DRAFT_FORMAT);
  const made = applyDraftEdits(doc, edits, 'create');
  if (!made.ok) throw new Error(`not the edits of a draft: ${JSON.stringify(made.error)}`);
  return doc;
}
