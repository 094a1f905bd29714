import type { Rng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Physical } from '#engine/model/fixture-type.ts';
import { NOTHING_STATED } from '#engine/model/fixture-type.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { type Pin, pinMode } from '#engine/type/pin.ts';

/** The copy of a library mode whose manual states this of the whole unit. */
function statedPin(physical: Partial<Physical>): Pin {
  const [type] = GENERIC_TYPES;
  const mode = type?.modes[0]?.name;
  if (type === undefined || mode === undefined) throw new Error('no generic type');
  const stated = { ...type, physical: { ...NOTHING_STATED, ...physical } };
  return pinMode({ typeId: 'stated', number: 1, hash: JSON.stringify(physical), type: stated }, mode);
}

/** One unit of a rig of `statedRig`: where it hangs, what feeds it, what it is. */
interface StatedUnit {
  readonly position?: string;
  readonly unit?: string;
  readonly circuit?: string;
  readonly type: string;
}

/** A rig of these units, in this order, and of types of one mode whose manuals state this; a type of null has no copy. */
export function statedRig(
  units: readonly StatedUnit[],
  types: Readonly<Record<string, Partial<Physical> | null>>,
): Rig {
  const modes = Object.entries(types).map(
    ([type, physical]): Edit => ({
      kind: 'set-mode',
      type,
      mode: 'M',
      footprints: [1],
      pin: physical === null ? null : statedPin(physical),
    }),
  );
  const rows = units.map(
    (unit, at): Edit => ({
      kind: 'add-fixture',
      fixture: fixtureId(`f${at + 1}`),
      cells: { ...unit, mode: 'M', order: at + 1 },
    }),
  );
  return applyEdits(EMPTY_RIG, [...modes, ...rows]);
}

/** Units and types of every kind: names written in several ways, figures stated, not stated, and such as cannot be. */
export function randomStated(rng: Rng, units: number) {
  const types = Object.fromEntries(
    ['Spot', 'Wash', 'Bar', 'Fan'].map((type) => [
      type,
      rng.int(5) === 0
        ? null
        : {
            weight: rng.pick([null, 7.5, 31, Number.NaN, -2]),
            power: rng.pick([null, 480, 0.5, 1000, Number.POSITIVE_INFINITY, -1]),
            powerFactor: rng.pick([null, 0.6, 0.95, 1, 95]),
            voltage: rng.pick([null, { low: 100, high: 240 }, { low: 230, high: 230 }]),
            perBreaker: rng.pick([[], [{ breaker: 'B16', most: '8' }]]),
          },
    ]),
  );
  const rows = Array.from({ length: units }, () => ({
    position: rng.pick(['LX 1', 'lx  1', 'LX 2', '', ' ']),
    unit: rng.pick(['1', '2', '4', '4A', '10', '']),
    circuit: rng.pick(['A1', 'a1 ', 'A10', 'A2', '', ' ']),
    type: rng.pick(['Spot', 'spot', 'Wash', 'Bar', 'Fan', 'Ghost', '']),
  }));
  return { units: rows, types };
}
