import type { PinnedUse } from '../type/pin-slots.ts';
import type { SheetCell, SlotWords } from './sheet.ts';

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

type Uses = readonly PinnedUse[] | null;

/**
 * Reads the cells of a slot; what a type puts twice into one slot stands one behind the other. A million slots are slots of
 * a few modes, so that each slot of a mode is put into words once.
 */
export function slotReader(words: SlotWords): (uses: Uses) => SlotCells {
  const said = new WeakMap<readonly PinnedUse[], SlotCells>();
  const unknown = cellsOf(null, words);
  return (uses) => {
    if (uses === null) return unknown;
    const known = said.get(uses);
    if (known !== undefined) return known;
    const cells = cellsOf(uses, words);
    said.set(uses, cells);
    return cells;
  };
}

function cellsOf(uses: Uses, words: SlotWords): SlotCells {
  return {
    does: words.does(uses),
    cell: each(uses, ({ cell }) => cell),
    byte: each(uses, words.byte),
    first: each(uses, (use) => use.default),
    highlight: each(uses, (use) => use.highlight),
    values: each(uses, words.values),
  };
}

function each(uses: Uses, pick: (use: PinnedUse) => SheetCell): SheetCell {
  const cells = (uses ?? []).map(pick).filter((cell) => cell !== null && cell !== '');
  return cells.length > 1 ? cells.join(' / ') : (cells[0] ?? null);
}
