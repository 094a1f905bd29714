import type { OccupancyIndex } from '../../address/occupancy-index.ts';
import { openRanges, type UniverseRange, universesIn } from '../../address/universe-ranges.ts';
import { SLOTS, type Universe } from '../../model/address.ts';
import type { FixtureId } from '../../model/ids.ts';
import { Room } from '../room.ts';
import type { AllocateOptions } from './allocate-options.ts';

/** Free slots in one run, from a start of the grid on. */
export interface Stretch {
  readonly universe: Universe;
  /** Slot, 1-based. */
  readonly first: number;
  readonly slots: number;
}

/** Where there is room: what others leave free in the universes they use, and the universes nobody uses. */
export class Ground {
  readonly #room: Room;
  readonly #options: AllocateOptions;
  readonly #ranges: readonly UniverseRange[];
  /** Universes in which somebody stays. */
  readonly #used: ReadonlySet<number>;

  constructor(index: OccupancyIndex, moving: ReadonlySet<FixtureId>, options: AllocateOptions) {
    this.#options = options;
    this.#room = new Room(index, (seat) => moving.has(seat.fixture));
    this.#ranges = openRanges(options.allowed, options.barred);
    const stays = (universe: Universe) => index.of(universe).seats.some((seat) => !moving.has(seat.fixture));
    this.#used = new Set(index.universes().filter(stays));
  }

  /** The free stretches of the universes in use, by address. */
  rooms(): readonly Stretch[] {
    const open = [...this.#used].filter((at) => this.#ranges.some(({ first, last }) => first <= at && at <= last));
    return open.sort((a, b) => a - b).flatMap((universe) => [...this.stretchesIn(universe as Universe)]);
  }

  /** The universes nobody uses, ascending. */
  *unused(): Generator<Universe> {
    for (const universe of universesIn(this.#ranges)) if (!this.#used.has(universe)) yield universe;
  }

  isUsed(universe: Universe): boolean {
    return this.#used.has(universe);
  }

  /** All free stretches there are, by address. */
  *everywhere(): Generator<Stretch> {
    for (const universe of universesIn(this.#ranges)) yield* this.stretchesIn(universe);
  }

  *stretchesIn(universe: Universe): Generator<Stretch> {
    const { grid, spareAtEnd } = this.#options;
    for (const { first, last } of this.#room.stretches(universe)) {
      const start = Math.ceil((first - 1) / grid) * grid + 1;
      const slots = Math.min(last, SLOTS - spareAtEnd) - start + 1;
      if (slots > 0) yield { universe, first: start, slots };
    }
  }
}
