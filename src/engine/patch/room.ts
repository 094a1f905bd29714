import type { Seat } from '../address/occupancy.ts';
import type { OccupancyIndex } from '../address/occupancy-index.ts';
import { type Absolute, absolute, LAST_UNIVERSE, SLOTS, slotOf, type Universe, universeOf } from '../model/address.ts';

/** Which slots of one universe are taken, by slot number. */
interface Board {
  readonly taken: Uint8Array;
  /** The longest free run, or an overestimate of it: only ever used to pass a full universe by. */
  longest: number;
}

/**
 * The free slots of a rig while a plan is being made: it is asked where something fits, and told what was taken. A seat that
 * the plan `vacates` counts as free.
 */
export class Room {
  readonly #index: OccupancyIndex;
  readonly #vacates: (seat: Seat) => boolean;
  readonly #boards = new Map<number, Board>();

  constructor(index: OccupancyIndex, vacates: (seat: Seat) => boolean) {
    this.#index = index;
    this.#vacates = vacates;
  }

  /** The first start at or after `from` with `length` free slots within one universe, or undefined. */
  first(from: Absolute, length: number): Absolute | undefined {
    let slot: number = slotOf(from);
    for (let universe = universeOf(from) as number; universe <= LAST_UNIVERSE; universe++) {
      const start = this.firstIn(universe, slot, length);
      if (start !== undefined) return absolute(universe, start);
      slot = 1;
    }
    return undefined;
  }

  /** The first slot of `universe` at or after `slot` that starts `length` free slots, or undefined. */
  firstIn(universe: number, slot: number, length: number): number | undefined {
    const board = this.#board(universe);
    if (length > board.longest) return undefined;
    let free = 0;
    let longest = 0;
    for (let at = slot; at <= SLOTS; at++) {
      free = board.taken[at] === 0 ? free + 1 : 0;
      if (free === length) return at - length + 1;
      longest = Math.max(longest, free);
    }
    if (slot === 1) board.longest = longest;
    return undefined;
  }

  /** The start nearest to `near` with `length` free slots in its universe; the lower of two as near. */
  nearest(near: Absolute, length: number): Absolute | undefined {
    const universe = universeOf(near);
    const wanted = slotOf(near);
    let best: number | undefined;
    let from = 1;
    for (;;) {
      const start = this.firstIn(universe, from, length);
      if (start === undefined) break;
      if (best === undefined || Math.abs(start - wanted) < Math.abs(best - wanted)) best = start;
      if (start >= wanted) break;
      from = start + 1;
    }
    return best === undefined ? undefined : absolute(universe, best);
  }

  /** The nearest room in the universe of `near`, else in the next one that has room: upward first, then downward. */
  nearestAnywhere(near: Absolute, length: number): Absolute | undefined {
    const here = this.nearest(near, length);
    if (here !== undefined) return here;
    const universe = universeOf(near);
    const above = universe < LAST_UNIVERSE ? this.first(absolute(universe + 1, 1), length) : undefined;
    if (above !== undefined) return above;
    for (let below = universe - 1; below >= 1; below--) {
      const start = this.firstIn(below, 1, length);
      if (start !== undefined) return absolute(below, start);
    }
    return undefined;
  }

  /** The maximal free stretches of a universe, by ascending slot, both ends counted in. */
  *stretches(universe: number): Generator<{ readonly first: number; readonly last: number }> {
    const { taken } = this.#board(universe);
    let first = 1;
    for (let slot = 1; slot <= SLOTS + 1; slot++) {
      if (slot <= SLOTS && taken[slot] === 0) continue;
      if (slot > first) yield { first, last: slot - 1 };
      first = slot + 1;
    }
  }

  take(start: Absolute, length: number): void {
    const first = slotOf(start);
    this.#board(universeOf(start)).taken.fill(1, first, first + length);
  }

  #board(universe: number): Board {
    const known = this.#boards.get(universe);
    if (known !== undefined) return known;
    const taken = new Uint8Array(SLOTS + 1);
    for (const seat of this.#index.of(universe as Universe).seats) {
      if (!this.#vacates(seat)) taken.fill(1, seat.first, seat.last + 1);
    }
    const board = { taken, longest: SLOTS };
    this.#boards.set(universe, board);
    return board;
  }
}
