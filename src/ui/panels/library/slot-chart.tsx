import type { ChartSlot, ChartUse, ModeChart } from '#engine/type/type-chart.ts';
import { attributeWord, byteWord, CHART_WORDS } from '#words/type-chart.ts';
import { Mark } from '../../kit/mark.tsx';
import { type Column, Table } from '../../kit/table.tsx';
import { RangeList } from './range-list.tsx';

export interface SlotChartProps {
  readonly mode: string;
  readonly chart: ModeChart;
}

/** Every slot of every break of a mode: what it does, where it stands, and what its values mean. */
export function SlotChart({ mode, chart }: SlotChartProps) {
  const several = chart.breaks.length > 1;
  return chart.breaks.map((each) => {
    const title = CHART_WORDS.breakTitle(each.break);
    const rows = each.slots.flatMap(rowsOf);
    const cells = rows.some(({ use }) => use !== undefined && use.cell !== '');
    return (
      <div key={each.break} className={ROWS_AT_TOP}>
        {several ? <h3 className="text-large">{title}</h3> : null}
        <Table
          caption={several ? `${mode}, ${title}` : mode}
          columns={COLUMNS.filter((column) => column.key !== 'cell' || cells)}
          rows={rows}
          keyOf={(row) => row.key}
          rowName="slot"
        />
      </div>
    );
  });
}

/** Beside a list of values, the slot's other cells stand level with its first line. */
export const ROWS_AT_TOP = '[&_td]:align-top [&_th]:align-top';

interface ChartRow {
  readonly key: string;
  readonly slot: number;
  /** Undefined: a hole. */
  readonly use: ChartUse | undefined;
  /** Whether the slot is taken by others, too. */
  readonly shared: boolean;
}

function rowsOf({ slot, uses }: ChartSlot): readonly ChartRow[] {
  if (uses.length === 0) return [{ key: `${slot}`, slot, use: undefined, shared: false }];
  return uses.map((use, at) => ({ key: `${slot} ${at}`, slot, use, shared: uses.length > 1 }));
}

const COLUMNS: readonly Column<ChartRow>[] = [
  {
    key: 'slot',
    heading: CHART_WORDS.slot,
    numeric: true,
    cell: (row) => <span className="font-mono">{row.slot}</span>,
  },
  { key: 'does', heading: CHART_WORDS.does, cell: (row) => <Does row={row} /> },
  { key: 'cell', heading: CHART_WORDS.cell, wideOnly: true, cell: ({ use }) => use?.cell },
  { key: 'default', heading: CHART_WORDS.default, numeric: true, cell: ({ use }) => use?.default },
  { key: 'highlight', heading: CHART_WORDS.highlight, numeric: true, cell: ({ use }) => use?.highlight },
  {
    key: 'ranges',
    heading: CHART_WORDS.ranges,
    wideOnly: true,
    cell: ({ use }) => (use === undefined ? null : <RangeList use={use} />),
  },
];

/** On a phone the cell and the ranges stand below what the slot does. */
function Does({ row: { use, shared } }: { readonly row: ChartRow }) {
  if (use === undefined) return <span className="text-soft">{CHART_WORDS.hole}</span>;
  return (
    <>
      <span className="[overflow-wrap:anywhere]">{attributeWord(use)}</span>{' '}
      <span className="text-soft">{byteWord(use)}</span>
      {shared ? (
        <span>
          {' '}
          <Mark severity="blocker" /> {CHART_WORDS.twice}
        </span>
      ) : null}
      <span className="block text-soft sm:hidden">{use.cell}</span>
      <div className="sm:hidden">
        <RangeList use={use} />
      </div>
    </>
  );
}
