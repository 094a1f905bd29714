import type * as Y from 'yjs';
import { z } from 'zod';
import { ok, type Result, refuse } from '#base/result.ts';
import { RANGES_LIMIT } from '#engine/draft/cell-text.ts';
import { type DraftEdit, FACT_FIELDS, MODE_FIELDS, REPEAT_FIELDS, ROW_FIELDS } from '#engine/draft/draft.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';
import { isId } from '#engine/model/ids.ts';
import { draftCellKey } from './draft-cell.ts';
import { draftFormatOf, draftMapsOf } from './draft-maps.ts';

/** Edits of one call, at most. */
export const DRAFT_EDIT_LIMIT = 20_000;

/** Why edits were not made; nothing of them was written. */
export type DraftRefusal =
  /** The document has not arrived yet, or is no draft. */
  | { readonly code: 'not-a-draft' }
  /** The document was written by a newer version of this program. */
  | { readonly code: 'newer-format' }
  | { readonly code: 'too-many-edits'; readonly count: number; readonly limit: number }
  /** `edit` is the place of the edit in the list, from 0; `path` the part of it that is wrong; `problem` what is wrong. */
  | { readonly code: 'malformed'; readonly edit: number; readonly path: string; readonly problem: string };

/**
 * Makes edits as one transaction of one origin, all or nothing, in order. The document receives exactly the difference: a
 * cell that holds its value already is not written, and one that is not there is not emptied.
 */
export function applyDraftEdits(doc: Y.Doc, edits: readonly DraftEdit[], origin: unknown): Result<void, DraftRefusal> {
  const format = draftFormatOf(doc);
  if (format !== 'current') return refuse({ code: format === 'newer' ? 'newer-format' : 'not-a-draft' });
  const refusal = refusalOf(edits);
  if (refusal !== undefined) return refuse(refusal);
  doc.transact(() => writeDifference(draftMapsOf(doc).cells, edits), origin);
  return ok(undefined);
}

// Only the last value of a cell is written, so that undo has one value to take back.
function writeDifference(cells: Y.Map<unknown>, edits: readonly DraftEdit[]): void {
  const values = new Map(edits.map((edit) => [draftCellKey(edit), edit.value === '' ? null : edit.value]));
  for (const [key, value] of values) {
    if (value !== null && cells.get(key) !== value) cells.set(key, value);
    else if (value === null && cells.has(key)) cells.delete(key);
  }
}

function refusalOf(edits: readonly DraftEdit[]): DraftRefusal | undefined {
  if (edits.length > DRAFT_EDIT_LIMIT) return { code: 'too-many-edits', count: edits.length, limit: DRAFT_EDIT_LIMIT };
  for (const [at, edit] of edits.entries()) {
    const issue = draftEditSchema.safeParse(edit).error?.issues[0];
    if (issue !== undefined) return { code: 'malformed', edit: at, path: issue.path.join('.'), problem: issue.message };
  }
  return undefined;
}

// Half a surrogate pair cannot be sent to anybody: it would read differently here and there.
const isWhole = (text: string) => !/\p{Cs}/u.test(text);

const textOf = (limit: number) => z.string().max(limit).refine(isWhole, 'half a character').nullable();
const text = textOf(CELL_LIMIT);
const order = z.number().nullable();
const id = z.string().refine((value) => isId(value) && isWhole(value), 'no id');

const modeEdit = { of: z.literal('mode'), mode: id };
const rowEdit = { of: z.literal('row'), mode: id, row: id };

/** The longest text of a field is part of what is stored: see the guard in the tests. */
export const draftEditSchema = z.union([
  z.strictObject({ of: z.literal('facts'), field: z.enum(FACT_FIELDS), value: text }),
  z.strictObject({ ...modeEdit, field: z.literal('order'), value: order }),
  z.strictObject({ ...modeEdit, field: z.enum(MODE_FIELDS).exclude(['order']), value: text }),
  z.strictObject({ ...rowEdit, field: z.literal('order'), value: order }),
  z.strictObject({ ...rowEdit, field: z.literal('ranges'), value: textOf(RANGES_LIMIT) }),
  z.strictObject({ ...rowEdit, field: z.enum(ROW_FIELDS).exclude(['order', 'ranges']), value: text }),
  z.strictObject({ of: z.literal('repeat'), mode: id, repeat: id, field: z.enum(REPEAT_FIELDS), value: text }),
]) satisfies z.ZodType<DraftEdit>;
