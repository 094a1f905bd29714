import type { PinnedUse } from '../type/pin-slots.ts';
import type { SheetCell, Standing } from './sheet.ts';

/** What a sheet says of what a slot does, cell by cell. */
export interface SlotCells {
  readonly cell: SheetCell;
  readonly does: SheetCell;
  readonly byte: SheetCell;
  /** What it stands at first. */
  readonly first: SheetCell;
  readonly highlight: SheetCell;
  readonly values: SheetCell;
}

/** The cells of a slot; what a type puts twice into one slot stands one behind the other. */
export function slotCells(uses: readonly PinnedUse[] | null, words: Standing['slots']): SlotCells {
  return {
    does: words.does(uses),
    cell: each(uses, ({ cell }) => cell),
    byte: each(uses, words.byte),
    first: each(uses, (use) => use.default),
    highlight: each(uses, (use) => use.highlight),
    values: each(uses, words.values),
  };
}

function each(uses: readonly PinnedUse[] | null, pick: (use: PinnedUse) => SheetCell): SheetCell {
  const cells = (uses ?? []).map(pick).filter((cell) => cell !== null && cell !== '');
  return cells.length > 1 ? cells.join(' / ') : (cells[0] ?? null);
}
