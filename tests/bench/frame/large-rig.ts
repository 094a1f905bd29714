import { type Rng, seededRng } from '#base/rng.ts';
import { tableOf } from '#base/table.ts';
import { absolute, SLOTS } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { fixtureId, modeId } from '#engine/model/ids.ts';
import { readFixture } from '#engine/model/read-fixture.ts';
import { EMPTY_RIG, type Mode, type Rig } from '#engine/model/rig.ts';

const TYPES = 40;
/** Slots of the modes in use: from a dimmer to a large moving unit. 25 of them fill most of a universe. */
const WIDTHS = [1, 4, 6, 10, 14, 16, 20, 24, 27, 34] as const;

export interface LargeRigShape {
  readonly fixtures: number;
  /** At most; a universe that is full earlier has fewer. */
  readonly perUniverse: number;
  /** The share of fixtures that start on the last slot of the one before. */
  readonly clashing: number;
  readonly seed: number;
}

/** A large rig in the order a large show has: universes filled from the bottom, units along positions, a few clashes. */
export function largeRig(shape: LargeRigShape): Rig {
  const rng = seededRng(shape.seed);
  const modes = modesOfTypes();
  const fixtures: Fixture[] = [];
  for (let universe = 1; fixtures.length < shape.fixtures; universe++)
    fillUniverse(fixtures, universe, modes, rng, shape);
  return { ...EMPTY_RIG, fixtures: tableOf(fixtures), modes: tableOf(modes) };
}

function modesOfTypes(): Mode[] {
  return Array.from({ length: TYPES }, (_, at) => {
    const footprint = WIDTHS[at % WIDTHS.length] ?? 1;
    const type = `Type ${at}`;
    const mode = `Mode ${footprint}`;
    return { id: modeId(type, mode), type, mode, footprints: [footprint], pin: null };
  });
}

function fillUniverse(
  fixtures: Fixture[],
  universe: number,
  modes: readonly Mode[],
  rng: Rng,
  shape: LargeRigShape,
): void {
  let slot = 1;
  for (let at = 0; at < shape.perUniverse && fixtures.length < shape.fixtures; at++) {
    const mode = rng.pick(modes);
    const footprint = mode.footprints[0] ?? 1;
    const clashes = slot > 1 && rng.next() < shape.clashing;
    const start = clashes ? slot - 1 : slot;
    if (start + footprint - 1 > SLOTS) return;
    const number = fixtures.length + 1;
    fixtures.push(
      readFixture(randomId(rng), {
        channel: number,
        position: `Position ${Math.floor(number / 30)}`,
        unit: String(number % 30),
        type: mode.type,
        mode: mode.mode,
        address: absolute(universe, start),
        purpose: `Purpose ${number % 80}`,
        order: number,
      }),
    );
    slot = start + footprint;
  }
}

function randomId(rng: Rng) {
  return fixtureId(Array.from({ length: 16 }, () => '0123456789abcdefghjkmnpqrstvwxyz'[rng.int(32)]).join(''));
}
