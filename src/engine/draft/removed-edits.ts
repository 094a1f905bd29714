import {
  type DraftEdit,
  type DraftMode,
  type DraftRepeat,
  type DraftRow,
  MODE_FIELDS,
  REPEAT_FIELDS,
  ROW_FIELDS,
} from './draft.ts';

/** The edits that empty every cell of a row that is there. */
export const removeRowEdits = (mode: string, row: DraftRow): DraftEdit[] =>
  ROW_FIELDS.filter((field) => row[field] !== '').map((field) => ({
    of: 'row',
    mode,
    row: row.id,
    field,
    value: null,
  }));

export const removeRepeatEdits = (mode: string, repeat: DraftRepeat): DraftEdit[] =>
  REPEAT_FIELDS.filter((field) => repeat[field] !== '').map((field) => {
    return { of: 'repeat', mode, repeat: repeat.id, field, value: null };
  });

export const removeModeEdits = (mode: DraftMode): DraftEdit[] => [
  ...mode.rows.flatMap((row) => removeRowEdits(mode.id, row)),
  ...mode.repeats.flatMap((repeat) => removeRepeatEdits(mode.id, repeat)),
  ...MODE_FIELDS.filter((field) => mode[field] !== '').map(
    (field): DraftEdit => ({ of: 'mode', mode: mode.id, field, value: null }),
  ),
];
