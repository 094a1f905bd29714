import { getRow } from '#base/table.ts';
import type { Occupancy, Seat } from '../address/occupancy.ts';
import { actAsOne, type Sharer } from '../address/unit.ts';
import { SLOTS, type Slot } from '../model/address.ts';
import { modeOf } from '../model/find-mode.ts';
import type { Fixture } from '../model/fixture.ts';
import { modeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import type { PinnedUse } from '../type/pin-slots.ts';
import { usesOf } from './fixture-slots.ts';

/** Whether a slot is anybody's: units that act as one share it on purpose, any others are in each other's way. */
export type SlotState = 'free' | 'used' | 'acting-as-one' | 'claimed-twice';

/** A break of a fixture that claims a slot. */
export interface SlotUser {
  readonly fixture: Fixture;
  /** Which of its breaks, and which slot of it, both 1-based. */
  readonly part: number;
  readonly own: number;
  /** What it does there: nothing for a hole, which is the fixture's all the same; null when nobody knows. */
  readonly uses: readonly PinnedUse[] | null;
}

/** A slot of a universe, and everyone who claims it. */
export interface UniverseSlot {
  readonly slot: Slot;
  readonly state: SlotState;
  readonly users: readonly SlotUser[];
}

const NOBODY: readonly SlotUser[] = Object.freeze([]);

/** Whose each of the 512 slots of a universe is, and what it does there. [SL1] [SL2] [SL3] */
export function universeSlots(rig: Rig, { seats }: Pick<Occupancy, 'seats'>): readonly UniverseSlot[] {
  const users = new Map<number, SlotUser[]>();
  for (const seat of seats) takeSeat(rig, seat, users);
  return Array.from({ length: SLOTS }, (_, at) => {
    const claimants = users.get(at + 1) ?? NOBODY;
    return { slot: (at + 1) as Slot, state: stateOf(claimants), users: claimants };
  });
}

function takeSeat(rig: Rig, { fixture: id, part, first, last }: Seat, users: Map<number, SlotUser[]>): void {
  const fixture = getRow(rig.fixtures, id);
  if (fixture === undefined) return;
  const mode = modeOf(rig, fixture);
  for (let slot: number = first; slot <= last; slot++) {
    const own = slot - first + 1;
    const user = { fixture, part, own, uses: usesOf(mode, part, own) };
    const others = users.get(slot);
    if (others === undefined) users.set(slot, [user]);
    else others.push(user);
  }
}

function stateOf(users: readonly SlotUser[]): SlotState {
  const [first, ...others] = users;
  if (first === undefined) return 'free';
  if (others.length === 0) return 'used';
  const different = new Set(users.map(({ fixture }) => fixture.id)).size === users.length;
  const one = sharerOf(first);
  return different && others.every((user) => actAsOne(one, sharerOf(user))) ? 'acting-as-one' : 'claimed-twice';
}

const sharerOf = ({ fixture }: SlotUser): Sharer => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });
