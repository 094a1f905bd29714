import { type Column, Table, type TableProps } from '../../kit/table.tsx';
import { PHONE, useMedia } from '../../workspace/use-media.ts';

export interface TableOrCardsProps<Row> extends TableProps<Row> {
  /** The id by which a link finds a row. */
  readonly idOf: (row: Row) => string;
}

/** A table at a desk; on a phone a card for each row, so that nothing runs out at the side. */
export function TableOrCards<Row>({ idOf, ...table }: TableOrCardsProps<Row>) {
  const phone = useMedia(PHONE);
  if (!phone) return <Table {...table} />;
  const { columns, rows, keyOf, rowName, caption } = table;
  const name = columns.find(({ key }) => key === rowName);
  return (
    <ul aria-label={caption}>
      {rows.map((row) => (
        <li key={keyOf(row)} id={idOf(row)} className="border-b border-rule-strong py-3">
          {name === undefined ? null : <h3>{name.cell(row)}</h3>}
          <dl className="mt-1 grid grid-cols-2 gap-x-3 gap-y-1">
            {columns.map((column) => (column === name ? null : <Line key={column.key} column={column} row={row} />))}
          </dl>
        </li>
      ))}
    </ul>
  );
}

function Line<Row>({ column, row }: { readonly column: Column<Row>; readonly row: Row }) {
  return (
    <div className="min-w-0">
      <dt className="text-small text-soft">{column.heading}</dt>
      <dd className="[overflow-wrap:anywhere]">{column.cell(row)}</dd>
    </div>
  );
}
