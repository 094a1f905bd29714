import type { Slot } from '#engine/model/address.ts';
import type { SlotState, SlotUser, UniverseSlot } from '#engine/sheet/universe-slots.ts';

/** A line of the list of slots: a free slot, or one break that claims it. */
export interface SlotLine {
  readonly slot: Slot;
  readonly state: SlotState;
  readonly user: SlotUser | undefined;
  /** `first` where another unit, or room, begins. */
  readonly place: 'first' | 'next';
}

/** A line for each free slot, and for each claimant of any other. */
export function slotLines(slots: readonly UniverseSlot[]): readonly SlotLine[] {
  const lines: SlotLine[] = [];
  for (const { slot, state, users } of slots) {
    for (const user of users.length === 0 ? [undefined] : users) {
      const before = lines.at(-1);
      const same = before !== undefined && before.user?.fixture === user?.fixture && before.user?.part === user?.part;
      lines.push({ slot, state, user, place: same ? 'next' : 'first' });
    }
  }
  return lines;
}
