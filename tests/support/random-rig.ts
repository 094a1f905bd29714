import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { ADDRESS_FIELDS, type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';

const TYPES = ['Spot', 'spot', 'Wash ', 'Bar', 'Ghost', ''];
const MODES = ['1', '16', '27', 'two', 'Two', 'four', 'wide', ''];
const FOOTPRINTS: readonly (readonly number[])[] = [
  [1],
  [16],
  [27],
  [10, 20],
  [3, 0, 5, 7],
  [0, 4],
  [512],
  [513],
  [200, 312],
];
const NAMES = ['LX 1', 'lx  1', 'LX 2', '', ' ', 'Boom'];
const UNITS = ['1', '2', '4', '4A', '4a', '10', '', 'SL'];

export interface RandomRigShape {
  readonly fixtures: number;
  /** Universes addresses are drawn from; the first slots are drawn more often, so that there is trouble. */
  readonly universes: number;
}

/** One random edit of a rig of this shape: most set a cell, some to what its field cannot mean. */
export function randomEdit(rng: Rng, shape: RandomRigShape): Edit {
  const fixture = fixtureId(`f${rng.int(shape.fixtures)}`);
  const dice = rng.int(100);
  if (dice < 6) return { kind: 'add-fixture', fixture, cells: randomCells(rng, shape) };
  if (dice < 9) return { kind: 'remove-fixture', fixture };
  if (dice < 12) {
    return { kind: 'set-mode', type: rng.pick(TYPES), mode: rng.pick(MODES), footprints: rng.pick(FOOTPRINTS) };
  }
  if (dice < 14) return { kind: 'remove-mode', type: rng.pick(TYPES), mode: rng.pick(MODES) };
  const field = rng.pick(FIELDS);
  return { kind: 'set-cell', fixture, field, value: randomValue(rng, field, shape) };
}

function randomCells(rng: Rng, shape: RandomRigShape): Cells {
  return Object.fromEntries(FIELDS.map((field) => [field, randomValue(rng, field, shape)]));
}

function randomValue(rng: Rng, field: Field, shape: RandomRigShape): CellValue {
  if (rng.int(40) === 0) return rng.pick(['?', '12 or 13', 0, -3, 2.5, null]);
  if (field === 'channel') return rng.int(3) === 0 ? null : 1 + rng.int(Math.ceil(shape.fixtures / 2));
  if (field === 'position') return rng.pick(NAMES);
  if (field === 'unit') return rng.pick(UNITS);
  if (field === 'type') return rng.pick(TYPES);
  if (field === 'mode') return rng.pick(MODES);
  if (field === 'order') return rng.int(50);
  const part = (ADDRESS_FIELDS as readonly Field[]).indexOf(field);
  if (part < 0) return rng.pick(['front', 'back', null]);
  if (rng.int(part === 0 ? 8 : 2) === 0) return null;
  const slot = rng.int(3) === 0 ? 1 + rng.int(512) : 1 + rng.int(40);
  return rng.int(shape.universes) * 512 + slot;
}

/** A rig of random rows with every kind of trouble in it. */
export function randomRig(seed: number, shape: RandomRigShape): Rig {
  const rng = seededRng(seed);
  const modes: Edit[] = TYPES.slice(0, 4).flatMap((type) =>
    MODES.slice(0, 7).map((mode): Edit => ({ kind: 'set-mode', type, mode, footprints: rng.pick(FOOTPRINTS) })),
  );
  const rows: Extract<Edit, { kind: 'add-fixture' }>[] = [];
  for (let at = 0; at < shape.fixtures; at++) {
    // Every fourth row is like an earlier one, so that some act as one and some share a channel.
    const like = at > 0 && rng.int(4) === 0 ? rng.pick(rows).cells : undefined;
    const cells = like ?? randomCells(rng, shape);
    rows.push({ kind: 'add-fixture', fixture: fixtureId(`f${at}`), cells });
  }
  return applyEdits(EMPTY_RIG, [...modes, ...rows]);
}

/** The ids of a rig's fixtures, sorted. */
export function idsOf(rig: Rig) {
  return [...rowsOf(rig.fixtures)].map(({ id }) => id).sort();
}
