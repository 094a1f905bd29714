import type { Grid } from '#engine/list/grid.ts';
import type { Layout } from '#engine/list/layout.ts';
import type { ColumnAccount } from '#engine/list/read-list.ts';

/** For each column, its filled cells on lines that make fixtures (`taken` by row index), and how many went into them. */
export function accountColumns(
  grid: Grid,
  layout: Layout,
  taken: ReadonlyMap<number, ReadonlySet<number>>,
): readonly ColumnAccount[] {
  return layout.columns.map(({ heading, meaning }, column) => {
    let filled = 0;
    let used = 0;
    for (const [index, columns] of taken) {
      if ((grid.rows[index]?.cells[column] ?? '').trim() === '') continue;
      filled += 1;
      if (columns.has(column)) used += 1;
    }
    return { heading, meaning, filled, taken: used };
  });
}
