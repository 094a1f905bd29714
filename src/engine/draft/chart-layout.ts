import type { DraftMode, DraftRepeat, DraftRow } from './draft.ts';
import type { DraftTrouble } from './draft-trouble.ts';
import { readSlots } from './slots-text.ts';

/** A row that could be read, in the order of the chart. */
export interface LaidRow {
  readonly row: DraftRow;
  readonly break: number;
  /** Of its first cell; none: virtual. */
  readonly slots: readonly number[];
  readonly repeat: LaidRepeat | null;
}

export interface LaidRepeat {
  readonly repeat: DraftRepeat;
  readonly count: number;
  /** Of each break its rows are in, ascending: the lowest slot of the first cell, and slots from cell to cell. */
  readonly breaks: readonly { readonly break: number; readonly lowest: number; readonly step: number }[];
}

export interface ChartLayout {
  readonly rows: readonly LaidRow[];
  /** Those that have rows, in the order of their first rows. */
  readonly repeats: readonly LaidRepeat[];
  readonly troubles: readonly DraftTrouble[];
}

/** Cells of all repeats of a mode, at most: four breaks have no more slots. */
const CELL_LIMIT = 4 * 512;

/** Where the rows of a chart stand. What cannot be read is left out; a repeat that cannot be read comes once. */
export function layoutOf(mode: DraftMode): ChartLayout {
  const troubles: DraftTrouble[] = [];
  const read = mode.rows.flatMap((row) => readRow(mode, row, troubles));
  const known = new Map(mode.repeats.map((repeat) => [repeat.id, repeat]));
  const repeats = new Map<string, LaidRepeat>();
  let cells = 0;
  for (const { row } of read) {
    const repeat = known.get(row.repeat);
    if (repeat === undefined || repeats.has(repeat.id)) continue;
    const members = read.filter((each) => each.row.repeat === repeat.id);
    const laid = layRepeat(mode, repeat, members, CELL_LIMIT - cells, troubles);
    cells += laid.count;
    repeats.set(repeat.id, laid);
  }
  for (const { id } of mode.repeats) {
    if (repeats.has(id) || mode.rows.some((row) => row.repeat === id)) continue;
    troubles.push({ where: { of: 'repeat', mode: mode.id, repeat: id, field: 'count' }, kind: 'repeat-without-rows' });
  }
  const rows = read.map((each): LaidRow => ({ ...each, repeat: repeats.get(each.row.repeat) ?? null }));
  return { rows, repeats: [...repeats.values()], troubles };
}

/** The last slot that a row takes, with all its cells; 0 for a virtual one. */
export function lastSlotOf({ slots, break: number, repeat }: LaidRow): number {
  const step = repeat?.breaks.find((each) => each.break === number)?.step ?? 0;
  return Math.max(0, ...slots) + ((repeat?.count ?? 1) - 1) * step;
}

type ReadRow = Omit<LaidRow, 'repeat'>;

function readRow(mode: DraftMode, row: DraftRow, troubles: DraftTrouble[]): ReadRow[] {
  const where = { of: 'row', mode: mode.id, row: row.id } as const;
  const slots = readSlots(row.slots);
  const number = /^\s*[1-4]?\s*$/.test(row.break) ? Number(row.break) || 1 : undefined;
  if (row.repeat !== '' && !mode.repeats.some((each) => each.id === row.repeat)) {
    troubles.push({ where: { ...where, field: 'repeat' }, kind: 'repeat-gone' });
  }
  if (slots === undefined) {
    troubles.push({ where: { ...where, field: 'slots' }, kind: 'unreadable-slots', text: row.slots });
  }
  if (number === undefined) {
    troubles.push({ where: { ...where, field: 'break' }, kind: 'unreadable-break', text: row.break });
  }
  return slots === undefined || number === undefined ? [] : [{ row, slots, break: number }];
}

function layRepeat(
  mode: DraftMode,
  repeat: DraftRepeat,
  rows: readonly ReadRow[],
  left: number,
  troubles: DraftTrouble[],
): LaidRepeat {
  const where = { of: 'repeat', mode: mode.id, repeat: repeat.id } as const;
  const count = readWhole(repeat.count);
  const step = repeat.step.trim() === '' ? null : readWhole(repeat.step);
  const isTooMany = count !== undefined && count > left;
  if (count === undefined) {
    troubles.push({ where: { ...where, field: 'count' }, kind: 'unreadable-count', text: repeat.count });
  }
  if (isTooMany) troubles.push({ where: { ...where, field: 'count' }, kind: 'too-many-cells', text: repeat.count });
  if (step === undefined) {
    troubles.push({ where: { ...where, field: 'step' }, kind: 'unreadable-step', text: repeat.step });
  }
  const real = rows.filter((row) => row.slots.length > 0);
  const numbers = [...new Set(real.map((row) => row.break))].sort((a, b) => a - b);
  const breaks = numbers.map((number) => {
    const slots = real.filter((row) => row.break === number).flatMap((row) => row.slots);
    const lowest = Math.min(...slots);
    return { break: number, lowest, step: step ?? Math.max(...slots) - lowest + 1 };
  });
  return { repeat, count: isTooMany ? 1 : (count ?? 1), breaks };
}

/** 1 to 512. */
function readWhole(text: string): number | undefined {
  const [, digits] = /^\s*(\d{1,3})\s*$/.exec(text) ?? [];
  const number = Number(digits);
  return number >= 1 && number <= 512 ? number : undefined;
}
