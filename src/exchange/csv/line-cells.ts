import type { GridRow } from '#engine/list/grid.ts';
import type { LayoutColumn } from '#engine/list/layout.ts';
import { type Meaning, SHARED_MEANINGS } from '#engine/list/meaning.ts';
import type { ListRemark, RemarkCode } from '#engine/list/read-list.ts';
import { CELL_LIMIT } from '#engine/model/field.ts';

/** A line's cells by meaning, and what became of each. */
export interface LineCells {
  /** The first filled cell of a meaning that is taken once, `''` when there is none. */
  readonly one: (meaning: Meaning) => string;
  /** The column of that cell. */
  readonly column: (meaning: Meaning) => number | null;
  /** All filled cells of a meaning, in column order. */
  readonly joined: (meaning: Meaning, glue: string) => string;
  readonly remark: (code: RemarkCode, meaning: Meaning, text: string) => void;
  /** Keeps the cell of a meaning in the notes, under its heading. */
  readonly keep: (meaning: Meaning) => void;
  /** The notes columns, the columns to be kept in the notes, and the cells that had to be. */
  readonly notes: () => readonly string[];
  readonly remarks: readonly ListRemark[];
  /** Columns whose cell went into the fixture. */
  readonly taken: ReadonlySet<number>;
}

interface Cell {
  readonly index: number;
  readonly heading: string;
  readonly meaning: Meaning;
  readonly text: string;
}

export function lineCells(row: GridRow, columns: readonly LayoutColumn[]): LineCells {
  const remarks: ListRemark[] = [];
  const kept: string[] = [];
  const cells = columns
    .map(({ heading, meaning }, index): Cell => ({ index, heading, meaning, text: (row.cells[index] ?? '').trim() }))
    .filter(({ text, meaning }) => text !== '' && meaning !== 'ignore' && meaning !== 'order');
  const fitting = cells.filter(({ text }) => text.length <= CELL_LIMIT);
  const firsts = new Map<Meaning, Cell>();
  for (const cell of fitting) if (!firsts.has(cell.meaning)) firsts.set(cell.meaning, cell);
  const isTaken = (cell: Cell) => SHARED_MEANINGS.has(cell.meaning) || firsts.get(cell.meaning) === cell;
  for (const cell of cells) {
    const { index: column, text } = cell;
    if (text.length > CELL_LIMIT) remarks.push({ code: 'too-long', column, text: text.slice(0, 80) });
    else if (!isTaken(cell)) remarks.push({ code: 'not-taken', column, text });
  }
  const texts = (meaning: Meaning) => fitting.filter((cell) => cell.meaning === meaning).map(({ text }) => text);
  return {
    one: (meaning) => firsts.get(meaning)?.text ?? '',
    column: (meaning) => firsts.get(meaning)?.index ?? null,
    joined: (meaning, glue) => texts(meaning).join(glue),
    remark: (code, meaning, text) => remarks.push({ code, column: firsts.get(meaning)?.index ?? null, text }),
    keep: (meaning) => {
      const cell = firsts.get(meaning);
      if (cell === undefined) return;
      kept.push(labelled(cell));
      remarks.push({ code: 'kept-in-notes', column: cell.index, text: cell.text });
    },
    notes: () => [
      ...texts('notes'),
      ...fitting.filter(({ meaning }) => meaning === 'keep-in-notes').map(labelled),
      ...kept,
    ],
    remarks,
    taken: new Set(fitting.filter(isTaken).map(({ index }) => index)),
  };
}

const labelled = ({ heading, text }: Cell) => (heading === '' ? text : `${heading}: ${text}`);
