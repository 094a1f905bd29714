import type { ChartColumn } from './chart-columns.ts';

const WIDTHS: Readonly<Record<ChartColumn, string>> = {
  slots: 'w-[4.5rem]',
  name: 'w-[13rem]',
  attribute: 'w-[11rem]',
  ranges: 'w-[16rem]',
  default: 'w-[4.5rem]',
  highlight: 'w-[5.25rem]',
  break: 'w-[3.75rem]',
  part: 'w-[6rem]',
  repeat: 'w-[7rem]',
};

/** How wide a column is. */
export const columnWidth = (column: ChartColumn): string => WIDTHS[column];

/** How its cells are set. */
export const cellType = (column: ChartColumn): string =>
  column === 'slots' ? 'font-mono font-semibold tabular-nums' : 'tabular-nums';
