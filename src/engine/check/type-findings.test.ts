import { describe, expect, it } from 'vitest';
import { printFinding } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import type { Cells } from '../model/fixture.ts';
import { type FixtureType, type Hazards, NO_HAZARDS, NO_SETTINGS, NOTHING_STATED } from '../model/fixture-type.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { pinMode } from '../type/pin.ts';
import { checkRig } from './check-rig.ts';
import type { NewestRevisions } from './type-findings.ts';

const channel = (offset: number) => ({
  part: 'Body',
  break: 1,
  offsets: [offset],
  resolution: 1 as const,
  highlight: null,
  initial: null,
  uses: [{ attribute: 'Dimmer', snap: 'No' as const, master: 'None' as const, functions: [] }],
});

function typeWith(hazards: Partial<Hazards> = {}, firmware: readonly string[] = [], slots = 1): FixtureType {
  const channels = Array.from({ length: slots }, (_, at) => channel(at + 1));
  return {
    maker: 'Larkfield',
    model: 'Spot',
    shortName: '',
    description: '',
    guid: '',
    parts: [{ name: 'Body', kind: 'part', within: null, copy: null }],
    modes: [{ name: 'A', description: '', root: 'Body', channels, firmware }],
    physical: NOTHING_STATED,
    settings: NO_SETTINGS,
    hazards: { ...NO_HAZARDS, ...hazards },
  };
}

const take = (name: string, type: FixtureType, number = 1): Edit => ({
  kind: 'set-mode',
  type: name,
  mode: 'A',
  footprints: [1],
  pin: pinMode({ typeId: 'lib1', number, hash: `hash ${number}`, type }, 'A'),
});

function rigOf(edits: readonly Edit[], units: readonly Cells[]): Rig {
  const rows = units.map(
    (cells, at): Edit => ({
      kind: 'add-fixture',
      fixture: fixtureId(`f${at + 1}`),
      cells: { mode: 'A', address: at + 1, order: at, ...cells },
    }),
  );
  return applyEdits(EMPTY_RIG, [...edits, ...rows]);
}

const found = (rig: Rig, library?: NewestRevisions) => checkRig(rig, library).map(printFinding);

describe('what copied types give to say', () => {
  it('[CH13] a mode in which no channel takes a slot, once, naming its units', () => {
    const rig = rigOf(
      [take('Spot', typeWith({}, [], 0)), take('Wash', typeWith())],
      [{ type: 'Spot' }, { type: 'spot' }, { type: 'Wash' }],
    );
    expect(found(rig)).toEqual(['caution no-slots f1 f2']);
  });

  it('[CH14] units whose firmware lacks their mode, by firmware; one that cannot be compared, or is not known, is not named', () => {
    const rig = rigOf(
      [take('Spot', typeWith({}, ['1.4+']))],
      ['1.2', '1.5', 'v1.2', '', 'B7', '1.3'].map((firmware) => ({ type: 'Spot', firmware })),
    );
    expect(found(rig)).toEqual(['caution firmware-mode f1 f3', 'caution firmware-mode f6']);
  });

  it('[CH15] units whose firmware is not the wanted one of their type, in whatever mode', () => {
    const wanted: Edit = { kind: 'set-wanted', type: 'SPOT', version: '1.4' };
    const rig = rigOf(
      [take('Spot', typeWith()), wanted],
      ['1.2', '1.4.0', '', 'B7'].map((firmware) => ({ type: 'Spot', firmware })),
    );
    expect(found(rig)).toEqual(['note firmware-wanted f1 f4']);
  });

  it('[CH16] hazards that nobody answers for, until somebody does for every type that has them', () => {
    const edits = [
      take('Spot', typeWith({ laser: '4', heat: true })),
      take('Wash', typeWith({ laser: '1', strobe: true })),
    ];
    const units = [{ type: 'Spot' }, { type: 'Wash' }, { type: 'Spot' }];
    expect(found(rigOf(edits, units))).toEqual(['caution hazard-unsigned f1 f3', 'caution hazard-unsigned f2']);
    const signed = (types: readonly string[]): Edit => ({
      kind: 'set-signature',
      hazard: 'laser',
      person: 'Ona Reeve',
      on: '2026-11-25',
      types,
    });
    expect(found(rigOf([...edits, signed(['SPOT'])], units))).toEqual(['caution hazard-unsigned f2']);
    expect(found(rigOf([...edits, signed(['Wash'])], units))).toHaveLength(2);
  });

  it('[CH17] types of which the library has another revision, once it is known', () => {
    const rig = rigOf([take('Spot', typeWith(), 2)], [{ type: 'Spot' }]);
    const newest = (number: number) => new Map([['lib1', { number, hash: `hash ${number}` }]]);
    expect(found(rig)).toEqual([]);
    expect(found(rig, newest(2))).toEqual([]);
    expect(found(rig, newest(3))).toEqual(['note library-differs f1']);
    expect(found(rig, new Map([['lib2', { number: 9, hash: 'x' }]]))).toEqual([]);
  });
});
