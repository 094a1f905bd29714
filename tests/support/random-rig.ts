import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import type { NewestRevisions } from '#engine/check/type-findings.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { ADDRESS_FIELDS, type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { NOTHING_STATED, type Physical, SIGNED_HAZARDS } from '#engine/model/fixture-type.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { type Pin, pinMode } from '#engine/type/pin.ts';
import { randomCardEdit } from './random-card.ts';

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
    const [type, mode] = [rng.pick(TYPES), rng.pick(MODES)];
    return { kind: 'set-mode', type, mode, footprints: rng.pick(FOOTPRINTS), pin: randomPin(rng) };
  }
  if (dice < 14) return { kind: 'remove-mode', type: rng.pick(TYPES), mode: rng.pick(MODES) };
  if (dice < 16) return { kind: 'set-wanted', type: rng.pick(TYPES), version: rng.pick(['', '1.2', '2.x']) };
  if (dice < 18) return { kind: 'set-signature', ...randomSignature(rng) };
  if (dice < 26) return randomCardEdit(rng);
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
  if (field === 'along' || field === 'cable') return rng.pick([null, 1, 2, 50]);
  if (field === 'firmware') return rng.pick([null, '1.2', 'v1.2.0', '2.1', 'red']);
  if (field === 'lock') return rng.int(6) === 0 ? 'Ona Reeve' : null;
  const part = (ADDRESS_FIELDS as readonly Field[]).indexOf(field);
  if (part < 0) return rng.pick(['front', 'back', null]);
  if (rng.int(part === 0 ? 8 : 2) === 0) return null;
  const slot = rng.int(3) === 0 ? 1 + rng.int(512) : 1 + rng.int(40);
  return rng.int(shape.universes) * 512 + slot;
}

/** Now and then the copy of a library mode: with hazards, with a firmware it needs, or with no slot at all. */
function randomPin(rng: Rng): Pin | null {
  if (rng.int(2) === 0) return null;
  const base = rng.pick(GENERIC_TYPES);
  const number = rng.int(3);
  const pin = pinMode(
    { typeId: `t${rng.int(3)}`, number, hash: `hash ${number}`, type: base },
    rng.pick(base.modes).name,
  );
  const modes = pin.type.modes.map((mode) => ({
    ...mode,
    channels: rng.int(3) === 0 ? [] : mode.channels,
    firmware: rng.pick([[], ['1.2'], ['2.0+', 'blue']]),
  }));
  const hazards = { ...pin.type.hazards, laser: rng.pick([null, '1', '4'] as const) };
  return { ...pin, type: { ...pin.type, modes, hazards, physical: randomPhysical(rng) } };
}

/** What its manual states of loads and weights, if anything. */
const randomPhysical = (rng: Rng): Physical => ({
  ...NOTHING_STATED,
  power: rng.pick([null, 100, 1000 / 3, 2100]),
  powerFactor: rng.pick([null, 0.6, 1]),
  voltage: rng.pick([null, { low: 100, high: 240 }, { low: 230, high: 230 }]),
  weight: rng.pick([null, 4.1, 31]),
  perBreaker: rng.pick([
    [],
    [{ breaker: '', most: '1' }],
    [
      { breaker: 'BREAKER', most: '2 at 230 V' },
      { breaker: '16 A', most: '1' },
    ],
  ]),
});

/** What the library of the types of `randomRig` may have as its newest. */
export const RANDOM_LIBRARY: NewestRevisions = new Map([
  ['t0', { number: 2, hash: 'hash 2' }],
  ['t1', { number: 7, hash: 'hash 7' }],
]);

const randomSignature = (rng: Rng) => ({
  hazard: rng.pick(SIGNED_HAZARDS),
  person: rng.pick(['', 'Ona Reeve']),
  on: '2026-11-25',
  types: rng.pick([[], ['Spot'], ['wash', 'Bar']]),
});

/** A rig of random rows with every kind of trouble in it. */
export function randomRig(seed: number, shape: RandomRigShape): Rig {
  const rng = seededRng(seed);
  const modes: Edit[] = TYPES.slice(0, 4).flatMap((type) =>
    MODES.slice(0, 7).map(
      (mode): Edit => ({ kind: 'set-mode', type, mode, footprints: rng.pick(FOOTPRINTS), pin: randomPin(rng) }),
    ),
  );
  const wanted: Edit = { kind: 'set-wanted', type: rng.pick(TYPES.slice(0, 4)), version: '2.x' };
  const rows: Extract<Edit, { kind: 'add-fixture' }>[] = [];
  for (let at = 0; at < shape.fixtures; at++) {
    // Every fourth row is like an earlier one, so that some act as one and some share a channel.
    const like = at > 0 && rng.int(4) === 0 ? rng.pick(rows).cells : undefined;
    const cells = like ?? randomCells(rng, shape);
    rows.push({ kind: 'add-fixture', fixture: fixtureId(`f${at}`), cells });
  }
  return applyEdits(EMPTY_RIG, [...modes, wanted, ...rows]);
}

/** The rig with exactly these units locked. */
export function withLocks(rig: Rig, locked: ReadonlySet<FixtureId>): Rig {
  return applyEdits(
    rig,
    idsOf(rig).map((id) => ({
      kind: 'set-cell',
      fixture: id,
      field: 'lock',
      value: locked.has(id) ? 'Ona Reeve' : null,
    })),
  );
}

/** The ids of a rig's fixtures, sorted. */
export function idsOf(rig: Rig) {
  return [...rowsOf(rig.fixtures)].map(({ id }) => id).sort();
}
