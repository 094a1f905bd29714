import { getRow } from '#base/table.ts';
import { type Absolute, absolute, SLOTS, slotOf, type Universe, universeOf } from '#engine/model/address.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { isLocked } from '#engine/model/locked.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type BreakOf, moveBreakPlan, partyOf } from '#engine/patch/move-break-plan.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { createListeners } from '../live/listeners.ts';
import type { ApplyRefusal, RigStore } from '../live/rig-store.ts';

/** A break on its way to another address. */
interface Carried {
  readonly block: BreakOf;
  readonly from: Absolute;
  /** Where it would start if it were put down now. */
  readonly at: Absolute;
  readonly by: 'keys' | 'pointer' | 'finger';
}

/** What came of the last block that was carried. */
export type Carriage =
  | { readonly kind: 'moved'; readonly fixture: FixtureId; readonly from: Absolute; readonly to: Absolute }
  | { readonly kind: 'left'; readonly fixture: FixtureId; readonly from: Absolute }
  | { readonly kind: 'refused'; readonly refusal: ApplyRefusal }
  | { readonly kind: 'no-plan'; readonly refusal: PlanRefusal }
  | { readonly kind: 'taken-back' };

export interface CarryState {
  readonly carried: Carried | undefined;
  readonly last: Carriage | undefined;
}

/** One block at a time, picked up, carried and put down; nothing is written before it is put. */
export interface Carry {
  state(): CarryState;
  subscribe(listen: () => void): () => void;
  /** False for a reader and for a locked unit: the block stays where it is. */
  pickUp(block: BreakOf, from: Absolute, by: Carried['by']): boolean;
  aim(at: Absolute): void;
  /** Carries the move out as one step. Where it went, or undefined when it stayed. */
  put(): Absolute | undefined;
  leave(): void;
  takeBack(): void;
  /** Says that another edit made here was refused. */
  refused(refusal: ApplyRefusal): void;
}

export function createCarry(store: RigStore): Carry {
  let state: CarryState = { carried: undefined, last: undefined };
  const changed = createListeners();
  const set = (next: CarryState) => {
    // Others see where a block is on its way, and that it is no more.
    if (state.carried !== undefined && next.carried === undefined) store.setWhere(null);
    state = next;
    changed.tell();
  };
  const tell = ({ fixture, part }: BreakOf, at: Absolute) =>
    store.setWhere({ fixture, field: ADDRESS_FIELDS[part - 1] ?? 'address', at });
  return {
    state: () => state,
    subscribe: changed.add,
    pickUp({ fixture, part }, from, by) {
      if (!store.canEdit()) {
        set({ carried: undefined, last: { kind: 'refused', refusal: { code: 'read-only' } } });
        return false;
      }
      const refusal = heldBy(store.rig(), fixture);
      if (refusal !== undefined) {
        set({ carried: undefined, last: { kind: 'no-plan', refusal } });
        return false;
      }
      set({ carried: { block: { fixture, part }, from, at: from, by }, last: undefined });
      tell({ fixture, part }, from);
      return true;
    },
    aim(at) {
      const { carried } = state;
      if (carried === undefined || carried.at === at) return;
      set({ carried: { ...carried, at }, last: undefined });
      tell(carried.block, at);
    },
    put() {
      const { carried } = state;
      if (carried === undefined) return undefined;
      const last = putDown(store, carried);
      set({ carried: undefined, last });
      return last.kind === 'moved' ? last.to : undefined;
    },
    leave() {
      const { carried } = state;
      if (carried === undefined) return;
      set({ carried: undefined, last: { kind: 'left', fixture: carried.block.fixture, from: carried.from } });
    },
    takeBack() {
      if (store.undo() !== undefined) set({ carried: undefined, last: { kind: 'taken-back' } });
    },
    refused: (refusal) => set({ ...state, last: { kind: 'refused', refusal } }),
  };
}

/** Why a block stays where it is: its unit is locked, or one that acts as one with it. [LK1] */
function heldBy(rig: Rig, id: FixtureId): PlanRefusal | undefined {
  const fixture = getRow(rig.fixtures, id);
  const locked = fixture && partyOf(rig, fixture).find(isLocked);
  return locked && { code: 'locked', fixture: locked.id };
}

function putDown(store: RigStore, { block, from, at }: Carried): Carriage {
  if (at === from) return { kind: 'left', fixture: block.fixture, from };
  const plan = moveBreakPlan(store.rig(), block, at);
  if (!plan.ok) return { kind: 'no-plan', refusal: plan.error };
  const applied = store.apply(plan.value);
  return applied.ok
    ? { kind: 'moved', fixture: block.fixture, from, to: at }
    : { kind: 'refused', refusal: applied.error };
}

/** Slots that a key carries a block by. */
const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, PageUp: -10, PageDown: 10 };

/** So many slots along its universe, and not over its ends. */
export const stepAlong = (at: Absolute, by: number): Absolute => absolute(universeOf(at), within(slotOf(at) + by));

/**
 * Where a key carries a block: along its universe, or with Ctrl up and down to the universe above or below of those shown.
 * Undefined for a key that carries nowhere.
 */
export function aimOfKey(
  { key, ctrlKey }: { readonly key: string; readonly ctrlKey: boolean },
  at: Absolute,
  universes: readonly Universe[],
): Absolute | undefined {
  const universe = universeOf(at);
  const step = STEPS[key];
  if (step !== undefined) return stepAlong(at, step);
  if (!ctrlKey || (key !== 'ArrowUp' && key !== 'ArrowDown')) return undefined;
  const next = universes[universes.indexOf(universe) + (key === 'ArrowUp' ? -1 : 1)];
  return absolute(next ?? universe, slotOf(at));
}

/** Where the ribbons lie, in pixels of the window: left end and length of each, top of the first line, height of a line. */
export interface RibbonPlaces {
  readonly left: number;
  readonly length: number;
  readonly top: number;
  readonly line: number;
}

/** The start of a block held `grip` slots after its first one, when the pointer is at `x`, `y`. */
export function aimOfPoint(
  { x, y }: { readonly x: number; readonly y: number },
  grip: number,
  { left, length, top, line }: RibbonPlaces,
  universes: readonly Universe[],
): Absolute | undefined {
  const index = Math.max(0, Math.min(universes.length - 1, Math.floor((y - top) / line)));
  const universe = universes[index];
  if (universe === undefined || length <= 0) return undefined;
  return absolute(universe, within(slotOfX(x, left, length) - grip));
}

/** The slot at `x` of a ribbon; below 1 or past 512 beside it. */
export const slotOfX = (x: number, left: number, length: number): number =>
  Math.floor(((x - left) / length) * SLOTS) + 1;

const within = (slot: number) => Math.max(1, Math.min(SLOTS, slot));
