import type { Severity } from '#engine/model/finding.ts';
import type { ColumnId } from '../live/rows/column.ts';

/** How a marked text is underlined: wavy for what must not stay, dotted for the rest. */
export const MARKED: Readonly<Record<Severity, string>> = {
  blocker: 'text-blocker underline decoration-wavy decoration-1 underline-offset-[3px]',
  caution: 'text-caution underline decoration-dotted underline-offset-[3px]',
  note: 'underline decoration-dotted underline-offset-[3px]',
};

const RIGHT: readonly ColumnId[] = ['channel', 'unit', 'footprint'];
const ADDRESSES: readonly ColumnId[] = ['address', 'address2', 'address3', 'address4'];

const LOOKS = {
  plain: '',
  selected: 'bg-selected',
  cursor: 'outline-2 -outline-offset-2 outline-edge group-focus-within/grid:outline-ink',
} as const;

export function cellClasses(column: ColumnId, look: keyof typeof LOOKS): string {
  const side = RIGHT.includes(column) ? 'justify-end' : '';
  const type = ADDRESSES.includes(column) ? 'font-mono font-semibold tabular-nums' : 'tabular-nums';
  return `relative flex shrink-0 items-center px-2 ${side} ${type} ${LOOKS[look]}`;
}

/** How the head of a column lies over its cells. */
export const headSide = (column: ColumnId): string => (RIGHT.includes(column) ? 'justify-end' : 'justify-start');
