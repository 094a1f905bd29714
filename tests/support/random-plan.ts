import type { Rng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { absolute, type Universe } from '#engine/model/address.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { SIGNED_HAZARDS } from '#engine/model/fixture-type.ts';
import { type FixtureId, fixtureId, noteId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { type Pin, pinMode } from '#engine/type/pin.ts';
import { randomCardEdit } from './random-card.ts';

const TEXTS = ['', 'Bridge 1', 'bridge  1', 'Spot', 'SPOT', '4A', 'half 😀', 'x/y', '"[1]"', '\u0000', 'é', 'é'];
const NUMBERS = [0, 1, 7, 512, 613, 999_999, 1_000_000, -3, 2.5, 1e21, absolute(63999, 512)];

/** A cell value of any kind, fitting its field or not. */
export function randomValue(rng: Rng): CellValue {
  const kind = rng.int(5);
  if (kind === 0) return null;
  return kind < 3 ? rng.pick(TEXTS) : rng.pick([...NUMBERS, rng.int(2000)]);
}

function randomCells(rng: Rng): Cells {
  const cells: Partial<Record<Field, CellValue>> = {};
  for (const field of FIELDS) if (rng.int(3) > 0) cells[field] = randomValue(rng);
  return cells;
}

/** A pin of one of the built-in types, of some revision. */
function randomPin(rng: Rng): Pin {
  const type = rng.pick(GENERIC_TYPES);
  const number = rng.int(4);
  const { name } = rng.pick(type.modes);
  return pinMode({ typeId: `t${rng.int(3)}`, number, hash: `hash ${number}`, type }, name);
}

/** One edit on a rig whose fixtures are named from a pool, so that edits meet: rows there, rows gone, rows never there. */
function randomEdit(rng: Rng, fixtures: readonly FixtureId[]): Edit {
  const fixture = rng.pick(fixtures);
  switch (rng.int(18)) {
    case 0:
    case 1:
      return { kind: 'add-fixture', fixture, cells: randomCells(rng) };
    case 2:
      return { kind: 'remove-fixture', fixture };
    case 3:
      return {
        kind: 'set-mode',
        type: rng.pick(['Spot', 'SPOT', 'Wash']),
        mode: rng.pick(['', 'A']),
        footprints: [1 + rng.int(512), 0],
        pin: rng.int(2) === 0 ? null : randomPin(rng),
      };
    case 4:
      return { kind: 'remove-mode', type: rng.pick(['Spot', 'wash']), mode: rng.pick(['', 'a']) };
    case 5:
      return { kind: 'set-position', name: rng.pick(['Bridge 1', 'BRIDGE 1', 'Floor']), order: rng.int(9) };
    case 6:
      return { kind: 'remove-position', name: rng.pick(['bridge 1', 'Floor']) };
    case 7:
      return { kind: 'set-universe', universe: (1 + rng.int(3)) as Universe, label: rng.pick(['', 'Stage', 'House']) };
    case 8:
      return { kind: 'set-note', note: noteId(`n${rng.int(3)}`), text: rng.pick(TEXTS), order: rng.int(4) };
    case 9:
      return { kind: 'remove-note', note: noteId(`n${rng.int(3)}`) };
    case 10:
      return { kind: 'set-wanted', type: rng.pick(['Spot', 'SPOT', 'Wash']), version: rng.pick(['', '1.2', '1.4+']) };
    case 11:
      return {
        kind: 'set-signature',
        hazard: rng.pick(SIGNED_HAZARDS),
        person: rng.pick(['', 'Ona Reeve']),
        on: '2026-11-25',
        types: rng.pick([[], ['Spot'], ['Spot', 'Wash']]),
      };
    case 12:
      return randomCardEdit(rng);
    case 13: {
      const edit = randomCardEdit(rng);
      return { ...edit, value: randomValue(rng) };
    }
    default:
      return { kind: 'set-cell', fixture, field: rng.pick(FIELDS), value: randomValue(rng) };
  }
}

/** A plan of 1 to `edits` random edits on fixtures `f0` … of a pool of `pool`. */
export function randomPlan(rng: Rng, pool: number, edits: number): Plan {
  const fixtures = Array.from({ length: pool }, (_, n) => fixtureId(`f${n}`));
  const list = Array.from({ length: 1 + rng.int(edits) }, () => randomEdit(rng, fixtures));
  return { name: rng.pick(['edit', 'paste', 'import', 'remove'] as const), edits: list };
}

/** A rig as plain lists, for a comparison that reads well when it fails. */
export function listRig(rig: Rig) {
  return {
    fixtures: [...rowsOf(rig.fixtures)],
    modes: [...rowsOf(rig.modes)],
    positions: [...rowsOf(rig.positions)],
    universes: [...rowsOf(rig.universes)],
    notes: [...rowsOf(rig.notes)],
    wanted: [...rowsOf(rig.wanted)],
    signatures: [...rowsOf(rig.signatures)],
    cards: [...rowsOf(rig.cards)],
  };
}
