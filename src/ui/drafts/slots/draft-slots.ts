import { type LaidRow, layoutOf } from '#engine/draft/chart-layout.ts';
import type { DraftMode, DraftRow } from '#engine/draft/draft.ts';
import { SLOTS } from '#engine/model/address.ts';

/** A break of a mode, slot by slot. */
export interface DraftBreak {
  readonly break: number;
  /** Every slot from 1 to the footprint. */
  readonly slots: readonly DraftSlot[];
}

/** Without a use it is a hole; with two it is taken twice. */
export interface DraftSlot {
  readonly slot: number;
  readonly uses: readonly SlotUse[];
}

export interface SlotUse {
  readonly row: DraftRow;
  /** Which byte of its value: 0 is coarse. */
  readonly byte: number;
  readonly of: number;
  /** The cell it belongs to, from 1; 0 outside of repeats. */
  readonly cell: number;
}

/** What each slot of a chart does, by the rows that say so. Slots past the last of a universe are left out. */
export function slotsOfDraft(mode: DraftMode): readonly DraftBreak[] {
  const breaks = new Map<number, SlotUse[][]>();
  for (const laid of layoutOf(mode).rows) {
    for (const [slot, use] of usesOf(laid)) {
      const slots = breaks.get(laid.break) ?? [];
      breaks.set(laid.break, slots);
      while (slots.length < slot) slots.push([]);
      slots[slot - 1]?.push(use);
    }
  }
  return [...breaks]
    .sort(([a], [b]) => a - b)
    .map(([number, slots]) => ({ break: number, slots: slots.map((uses, at) => ({ slot: at + 1, uses })) }));
}

function usesOf({ row, slots, break: number, repeat }: LaidRow): [slot: number, use: SlotUse][] {
  const step = repeat?.breaks.find((each) => each.break === number)?.step ?? 0;
  const cells = Array.from({ length: repeat?.count ?? 1 }, (_, cell) => cell);
  return cells.flatMap((cell) =>
    slots.flatMap((slot, byte): [number, SlotUse][] => {
      const at = slot + cell * step;
      if (at > SLOTS) return [];
      return [[at, { row, byte, of: slots.length, cell: repeat === null ? 0 : cell + 1 }]];
    }),
  );
}
