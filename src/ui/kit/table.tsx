import type { ReactNode } from 'react';
import { KIT_WORDS } from '#words/screens.ts';

export interface Column<Row> {
  readonly key: string;
  readonly heading: string;
  readonly cell: (row: Row) => ReactNode;
  /** Numbers stand at the right, with figures of one width. */
  readonly numeric?: boolean;
  /** Left out on a phone, where the row's name says it or it can be done without. */
  readonly wideOnly?: boolean;
}

export interface TableProps<Row> {
  /** Says what the table holds; read by screen readers, not shown. */
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** The column whose cells name their row. */
  readonly rowName: string;
}

/** A short ruled table. It scrolls sideways within itself where it does not fit. */
export function Table<Row>({ caption, columns, rows, keyOf, rowName }: TableProps<Row>) {
  return (
    // Words for screen readers are placed within it, so that they do not widen the page.
    <section className="relative overflow-x-auto" aria-label={KIT_WORDS.tableOf(caption)}>
      <table className="w-full border-collapse text-left">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr className="border-b border-rule-strong text-soft">
            {columns.map((column) => (
              <th key={column.key} scope="col" className={`h-row px-2 font-normal ${looksOf(column)}`}>
                {column.heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={keyOf(row)} className="border-b border-rule">
              {columns.map((column) => {
                const classes = `h-row px-2 py-0.5 font-normal ${looksOf(column)}`;
                return column.key === rowName ? (
                  <th key={column.key} scope="row" className={classes}>
                    {column.cell(row)}
                  </th>
                ) : (
                  <td key={column.key} className={classes}>
                    {column.cell(row)}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const looksOf = <Row,>(column: Column<Row>) =>
  `${column.numeric ? 'text-right tabular-nums' : 'text-left'} ${column.wideOnly ? 'max-sm:hidden' : ''}`;
