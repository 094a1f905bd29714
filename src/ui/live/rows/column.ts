import type { PersonField } from '#engine/model/field.ts';

/** A column of the sheet: a cell a person writes, or the footprint, which follows from type and mode. */
export type ColumnId = PersonField | 'footprint';
