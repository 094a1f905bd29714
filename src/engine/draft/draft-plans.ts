import { type ChartLayout, lastSlotOf, layoutOf } from './chart-layout.ts';
import type { Draft, DraftEdit, DraftMode, DraftRow } from './draft.ts';
import { newRepeatEdits, newRowEdits } from './new-row.ts';
import { removeRepeatEdits, removeRowEdits } from './removed-edits.ts';
import { readSlots, slotsText } from './slots-text.ts';

// What people do to a chart beyond writing into a cell. All are pure; a mode or row that is not there gives no edits.

/** The first slot of a break after all that a chart takes there, cells of repeats counted in. */
export function nextSlot(mode: DraftMode, number: number): number {
  return nextIn(layoutOf(mode), number);
}

const nextIn = ({ rows }: ChartLayout, number: number) =>
  Math.max(0, ...rows.filter((row) => row.break === number).map(lastSlotOf)) + 1;

/** What a row to be added says; a row without `slots` gets one slot, the next of its break. */
export type PartialRow = Partial<Omit<DraftRow, 'id' | 'order'>>;

/** Puts rows below `afterRowId`; null: at the top. Without `slots` a row gets the next slot of its break. */
export function addRows(
  draft: Draft,
  modeId: string,
  afterRowId: string | null,
  rows: readonly PartialRow[],
  ids: () => string,
): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  if (mode === undefined) return [];
  const { orders, edits } = ordersAfter(mode, mode.rows, afterRowId, rows.length);
  const next = nextSlots(mode);
  const added = rows.flatMap((row, at) => {
    const number = Number(row.break) || 1;
    const slots = row.slots ?? String(next.take(number));
    next.note(number, slots);
    return newRowEdits(modeId, { ...row, slots, id: ids(), order: orders[at] ?? at });
  });
  return [...edits, ...added];
}

function nextSlots(mode: DraftMode) {
  const layout = layoutOf(mode);
  const next = new Map<number, number>();
  const take = (number: number) => next.get(number) ?? nextIn(layout, number);
  return {
    take,
    note: (number: number, slots: string) =>
      next.set(number, Math.max(take(number), ...(readSlots(slots) ?? []).map((slot) => slot + 1))),
  };
}

/** Takes rows out, and repeats that have no other row. */
export function removeRows(draft: Draft, modeId: string, rowIds: readonly string[]): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  if (mode === undefined) return [];
  const gone = new Set(rowIds);
  return [
    ...mode.rows.filter((row) => gone.has(row.id)).flatMap((row) => removeRowEdits(modeId, row)),
    ...emptiedRepeats(mode, gone),
  ];
}

/** The edits that take out repeats all of whose rows are among those that leave them. */
function emptiedRepeats(mode: DraftMode, leaving: ReadonlySet<string>): DraftEdit[] {
  return mode.repeats.flatMap((repeat) => {
    const rows = mode.rows.filter((row) => row.repeat === repeat.id);
    return rows.length > 0 && rows.every((row) => leaving.has(row.id)) ? removeRepeatEdits(mode.id, repeat) : [];
  });
}

/** Moves rows below `afterRowId`, in the order they stand in; null: to the top. Slots stay what they are. */
export function moveRows(
  draft: Draft,
  modeId: string,
  rowIds: readonly string[],
  afterRowId: string | null,
): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  if (mode === undefined) return [];
  const moving = mode.rows.filter((row) => rowIds.includes(row.id));
  const staying = mode.rows.filter((row) => !rowIds.includes(row.id));
  const { orders, edits } = ordersAfter(mode, staying, stayingBefore(mode, rowIds, afterRowId), moving.length);
  return [...edits, ...moving.flatMap((row, at) => orderEdits(modeId, row, orders[at] ?? row.order))];
}

/** The row itself, or the nearest one above it that stays. */
function stayingBefore(mode: DraftMode, moving: readonly string[], afterRowId: string | null): string | null {
  const at = mode.rows.findIndex((row) => row.id === afterRowId);
  return mode.rows.slice(0, at + 1).findLast((row) => !moving.includes(row.id))?.id ?? null;
}

/** Lets rows come `count` times; they leave the repeats they were in. What comes after them stays where it is. */
export function repeatRows(
  draft: Draft,
  modeId: string,
  rowIds: readonly string[],
  cells: { readonly count: number; readonly name: string },
  ids: () => string,
): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  const rows = mode?.rows.filter((row) => rowIds.includes(row.id)) ?? [];
  if (mode === undefined || rows.length === 0) return [];
  const id = ids();
  return [
    ...newRepeatEdits(modeId, { id, name: cells.name, count: String(cells.count), step: '' }),
    ...rows.map((row): DraftEdit => ({ of: 'row', mode: modeId, row: row.id, field: 'repeat', value: id })),
    ...emptiedRepeats(mode, new Set(rowIds)),
  ];
}

/** Lets the rows of a repeat come once. */
export function unrepeat(draft: Draft, modeId: string, repeatId: string): DraftEdit[] {
  const mode = modeOf(draft, modeId);
  const repeat = mode?.repeats.find((each) => each.id === repeatId);
  if (mode === undefined || repeat === undefined) return [];
  const rows = mode.rows.filter((row) => row.repeat === repeatId);
  return [
    ...rows.map((row): DraftEdit => ({ of: 'row', mode: modeId, row: row.id, field: 'repeat', value: null })),
    ...removeRepeatEdits(modeId, repeat),
  ];
}

/**
 * Shifts the slots of a row, and of all rows of its break below it, so that its lowest slot is `firstSlot`. Widths and
 * distances stay. Nothing for a row without slots, nor where a slot would be below 1.
 */
export function renumberFrom(draft: Draft, modeId: string, rowId: string, firstSlot: number): DraftEdit[] {
  const rows = layoutOf(modeOf(draft, modeId) ?? NO_MODE).rows;
  const at = rows.findIndex((each) => each.row.id === rowId);
  const first = rows[at];
  if (first === undefined || first.slots.length === 0) return [];
  const by = firstSlot - Math.min(...first.slots);
  const shifted = rows.slice(at).filter((each) => each.break === first.break && each.slots.length > 0);
  if (by === 0 || shifted.some((each) => Math.min(...each.slots) + by < 1)) return [];
  return shifted.map(({ row, slots }): DraftEdit => {
    return { of: 'row', mode: modeId, row: row.id, field: 'slots', value: slotsText(slots.map((slot) => slot + by)) };
  });
}

const NO_MODE: DraftMode = {
  id: '',
  order: 0,
  name: '',
  description: '',
  firmware: '',
  kept: '',
  rows: [],
  repeats: [],
};

export const modeOf = (draft: Draft, id: string): DraftMode | undefined => draft.modes.find((mode) => mode.id === id);

const orderEdits = (mode: string, row: DraftRow, order: number): DraftEdit[] =>
  row.order === order ? [] : [{ of: 'row', mode, row: row.id, field: 'order', value: order }];

/**
 * Orders for `count` rows below one of `rows`, and the edits that make room for them where there is none left between two
 * numbers: then all rows are counted anew.
 */
function ordersAfter(mode: DraftMode, rows: readonly DraftRow[], afterRowId: string | null, count: number) {
  const at = rows.findIndex((row) => row.id === afterRowId);
  const above = rows[at]?.order;
  const below = rows[at + 1]?.order;
  if (below === undefined) return { orders: counted(count, (above ?? 0) + 1, 1), edits: [] };
  const start = above ?? below - count - 1;
  const step = (below - start) / (count + 1);
  if (step > CLOSEST && step < Number.POSITIVE_INFINITY)
    return { orders: counted(count, start + step, step), edits: [] };
  const edits = rows.flatMap((row, place) => orderEdits(mode.id, row, place <= at ? place + 1 : place + 1 + count));
  return { orders: counted(count, at + 2, 1), edits };
}

/** Orders closer than this are counted anew, long before numbers run out of digits. */
const CLOSEST = 1e-6;

const counted = (count: number, first: number, step: number) =>
  Array.from({ length: count }, (_, at) => first + at * step);
