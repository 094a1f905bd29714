import { type DraftEdit, type DraftRepeat, type DraftRow, REPEAT_FIELDS, ROW_FIELDS } from './draft.ts';

/** The edits that put in a row: an empty cell needs none. */
export function newRowEdits(mode: string, row: Partial<DraftRow> & Pick<DraftRow, 'id' | 'order'>): DraftEdit[] {
  return ROW_FIELDS.flatMap((field): DraftEdit[] => {
    const value = row[field] ?? '';
    return value === '' ? [] : [{ of: 'row', mode, row: row.id, field, value }];
  });
}

/** The edits that put in a repeat. */
export function newRepeatEdits(mode: string, repeat: DraftRepeat): DraftEdit[] {
  return REPEAT_FIELDS.flatMap((field): DraftEdit[] =>
    repeat[field] === '' ? [] : [{ of: 'repeat', mode, repeat: repeat.id, field, value: repeat[field] }],
  );
}
