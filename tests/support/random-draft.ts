import type { Rng } from '#base/rng.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import { readDraft } from '#document/draft/draft-reader.ts';
import {
  type Draft,
  type DraftEdit,
  FACT_FIELDS,
  MODE_FIELDS,
  REPEAT_FIELDS,
  ROW_FIELDS,
} from '#engine/draft/draft.ts';

/** The draft that edits make of an empty one. */
export const draftOfEdits = (edits: readonly DraftEdit[]): Draft => readDraft(createDraftDoc(edits));

/** Ids that nobody else gives: `a1`, `a2` … */
export function countedIds(prefix = 'n'): () => string {
  let count = 0;
  return () => `${prefix}${++count}`;
}

const TEXTS = [
  '',
  '',
  '1',
  '2',
  '5-6',
  '5, 9',
  '7/8',
  '600',
  'Pan',
  'Shutter1Strobe',
  '128/1',
  'yes',
  '100-240 V',
  '0-10 Closed\n11-127 Strobe [Shutter1Strobe]\n128-255 Open',
  '10-5 x\n>300\n0-99 half',
  'r1',
  'p1',
  '\t😀',
  '-1',
  '3 x',
];

/** An edit of anything in a draft of up to two modes with up to four rows each, sensible or not. */
function randomDraftEdit(rng: Rng): DraftEdit {
  const mode = rng.pick(['m1', 'm2']);
  const value = rng.pick([null, ...TEXTS]);
  const order = rng.pick([null, 1, 1, 2, 2.5, 3, 4]);
  switch (rng.int(8)) {
    case 0:
      return { of: 'facts', field: rng.pick(FACT_FIELDS), value };
    case 1: {
      const field = rng.pick(MODE_FIELDS);
      return { of: 'mode', mode, field, value: field === 'order' ? order : value };
    }
    case 2:
      return { of: 'repeat', mode, repeat: rng.pick(['p1', 'p2']), field: rng.pick(REPEAT_FIELDS), value };
    default: {
      const field = rng.int(3) === 0 ? 'order' : rng.pick(ROW_FIELDS);
      const row = rng.pick(['r1', 'r2', 'r3', 'r4']);
      return { of: 'row', mode, row, field, value: field === 'order' ? order : value };
    }
  }
}

export const randomDraftEdits = (rng: Rng, most: number): DraftEdit[] =>
  Array.from({ length: 1 + rng.int(most) }, () => randomDraftEdit(rng));

/** A draft of two modes that are surely there, and anything in them. */
export function randomDraft(rng: Rng): Draft {
  return draftOfEdits([
    { of: 'mode', mode: 'm1', field: 'order', value: 1 },
    { of: 'mode', mode: 'm2', field: 'order', value: 2 },
    ...randomDraftEdits(rng, 200),
  ]);
}
