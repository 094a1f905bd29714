import type { Grid } from '#engine/list/grid.ts';
import type { Layout, LayoutColumn } from '#engine/list/layout.ts';
import { MEANINGS, type Meaning } from '#engine/list/meaning.ts';
import type { FixtureList } from '#engine/list/read-list.ts';
import { LISTS_IN_WORDS, MEANING_WORDS, REASON_WORDS } from '#words/lists-in.ts';
import { BareSelect } from '../../kit/select.tsx';
import { type Column, Table } from '../../kit/table.tsx';
import { columnName } from './column-name.ts';

export interface ColumnsTableProps {
  readonly grid: Grid;
  readonly layout: Layout;
  readonly list: FixtureList;
  readonly onMeaning: (column: number, meaning: Meaning) => void;
}

interface Row extends LayoutColumn {
  readonly index: number;
  readonly examples: string;
  readonly taken: string;
}

const CHOICES = MEANINGS.map((meaning) => ({ value: meaning, label: MEANING_WORDS[meaning] }));
const EXAMPLES = 3;

/** Every column of the list with what it was taken to mean, and why; each can be changed. */
export function ColumnsTable({ grid, layout, list, onMeaning }: ColumnsTableProps) {
  const rows = layout.columns.map((column, index): Row => {
    const account = list.columns[index];
    return {
      ...column,
      index,
      examples: firstCells(grid, layout.headingRow, index).join(', '),
      taken: account ? LISTS_IN_WORDS.takenOf(account.taken, account.filled) : '',
    };
  });
  const columns: Column<Row>[] = [
    { key: 'column', heading: LISTS_IN_WORDS.column, cell: (row) => columnName(row.index) },
    {
      key: 'heading',
      heading: LISTS_IN_WORDS.heading,
      cell: (row) => (row.heading === '' ? <span className="text-soft">{LISTS_IN_WORDS.noHeading}</span> : row.heading),
    },
    {
      key: 'examples',
      wideOnly: true,
      heading: LISTS_IN_WORDS.examples,
      cell: (row) => <span className="block max-w-64 truncate text-soft">{row.examples}</span>,
    },
    {
      key: 'meaning',
      heading: LISTS_IN_WORDS.meaning,
      cell: (row) => (
        <div className="min-w-32 sm:min-w-44">
          <BareSelect<Meaning>
            name={LISTS_IN_WORDS.meaningOf(columnName(row.index))}
            choices={CHOICES}
            value={row.meaning}
            onChoose={(meaning) => onMeaning(row.index, meaning)}
          />
        </div>
      ),
    },
    { key: 'because', wideOnly: true, heading: LISTS_IN_WORDS.because, cell: (row) => REASON_WORDS[row.because] },
    { key: 'taken', heading: LISTS_IN_WORDS.taken, cell: (row) => row.taken },
  ];
  return (
    <Table
      caption={LISTS_IN_WORDS.columns}
      columns={columns}
      rows={rows}
      keyOf={(row) => String(row.index)}
      rowName="column"
    />
  );
}

function firstCells(grid: Grid, headingRow: number | null, column: number): readonly string[] {
  const cells: string[] = [];
  for (let i = headingRow === null ? 0 : headingRow + 1; i < grid.rows.length && cells.length < EXAMPLES; i++) {
    const cell = grid.rows[i]?.cells[column]?.trim() ?? '';
    if (cell !== '' && !cells.includes(cell)) cells.push(cell);
  }
  return cells;
}
