import type { DraftEdit } from '#engine/draft/draft.ts';
import { FACT_FIELDS, MODE_FIELDS, REPEAT_FIELDS, ROW_FIELDS } from '#engine/draft/draft.ts';
import { isId } from '#engine/model/ids.ts';

/** A cell of a draft: what an edit names, without its value. */
export type DraftCell = DraftEdit extends infer Edit ? (Edit extends DraftEdit ? Omit<Edit, 'value'> : never) : never;

/** The key under which a document keeps a cell. */
export function draftCellKey(cell: DraftCell): string {
  switch (cell.of) {
    case 'facts':
      return `facts/${cell.field}`;
    case 'mode':
      return `mode/${cell.mode}/${cell.field}`;
    case 'row':
      return `row/${cell.mode}/${cell.row}/${cell.field}`;
    case 'repeat':
      return `repeat/${cell.mode}/${cell.repeat}/${cell.field}`;
  }
}

/** The cell kept under a key; undefined for a key that is none. */
export function parseDraftCellKey(key: string): DraftCell | undefined {
  const [of, ...rest] = key.split('/');
  const last = rest.at(-1) ?? '';
  const ids = rest.slice(0, -1);
  if (!ids.every(isId)) return undefined;
  const [mode = '', inner = ''] = ids;
  if (of === 'facts' && ids.length === 0) return withField(FACT_FIELDS, last, (field) => ({ of, field }));
  if (of === 'mode' && ids.length === 1) return withField(MODE_FIELDS, last, (field) => ({ of, mode, field }));
  if (of === 'row' && ids.length === 2)
    return withField(ROW_FIELDS, last, (field) => ({ of, mode, row: inner, field }));
  if (of !== 'repeat' || ids.length !== 2) return undefined;
  return withField(REPEAT_FIELDS, last, (field) => ({ of, mode, repeat: inner, field }));
}

function withField<Field extends string>(
  fields: readonly Field[],
  text: string,
  cell: (field: Field) => DraftCell,
): DraftCell | undefined {
  const field = fields.find((each) => each === text);
  return field === undefined ? undefined : cell(field);
}
