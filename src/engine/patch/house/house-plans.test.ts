import { describe, expect, it } from 'vitest';
import { getRow } from '#base/table.ts';
import { listRig } from '#tests/support/random-plan.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { housePositions } from '../../house/house-positions.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { setCard } from '../../model/card-edits.ts';
import { recordOf } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { addLine, addPlace, type LineKind, removeLine, removePlace, renameOutlet } from './house-plans.ts';

type Planned = ReturnType<typeof addPlace>;

const RIG = rigOf('1:1 Kettle-spot/16 @Bar.1\n1:21 Kettle-wash/10 @Floor.1');

function done(rig: Rig, plan: Planned): Rig {
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  return applyEdits(rig, plan.value.edits);
}

const codeOf = (plan: Planned) => (plan.ok ? 'ok' : plan.error.code);
const added = (kind: LineKind, line: string) => recordOf(done(RIG, addLine(RIG, kind, line, 'k1')).cards);

describe('one typed line', () => {
  it('[HO4] adds a spare: how many, type, mode, where', () => {
    const spare = (line: string) => {
      const [{ type, mode, count, where } = { type: '', mode: '', count: 0, where: '' }] = added('spare', line).spares;
      return [type, mode, count, where].join(' | ');
    };
    expect(spare('2 spot, 16, crate 4')).toBe('Kettle-spot | 16 | 2 | crate 4');
    expect(spare('3x wash, crate 4')).toBe('Kettle-wash |  | 3 | crate 4');
    expect(spare('3 × Lantern, 10')).toBe('Lantern | 10 | 3 | ');
    expect(spare('kettle')).toBe('kettle |  | 1 | ');
    expect(spare('2000 W lamp')).toBe('W lamp |  | 2000 | ');
  });

  it('[HO4] adds a contact, its parts known by what they look like', () => {
    expect(added('contact', 'Hollis Brandreth, hollis@house.invalid, rigger, +44 (0)100 2000').contacts).toMatchObject([
      { name: 'Hollis Brandreth', role: 'rigger', phone: '+44 (0)100 2000', email: 'hollis@house.invalid' },
    ]);
    expect(added('contact', 'Stage door').contacts).toMatchObject([{ name: 'Stage door', role: '', phone: '' }]);
  });

  it('[HO4] adds an outlet under its name, and a hired item', () => {
    const outlets = [...added('outlet', 'FOH 3, Front bridge, DMX, rack 2').outlets.values()];
    expect(outlets).toMatchObject([
      { key: 'foh 3', name: 'FOH 3', position: 'Front bridge', carries: 'dmx', to: 'rack 2' },
    ]);
    expect(added('hire', '2 Hazer, Tide Hire, 2026-12-05').hires).toMatchObject([
      { item: 'Hazer', from: 'Tide Hire', count: 2, due: '2026-12-05', returned: '' },
    ]);
    expect(codeOf(addLine(RIG, 'hire', ' , Tide Hire', 'k1'))).toBe('nothing-said');
    const twice = done(RIG, addLine(RIG, 'outlet', 'FOH 3', ''));
    expect(codeOf(addLine(twice, 'outlet', 'foh  3', ''))).toBe('name-taken');
  });

  it('[HO5] is taken away whole, and what is gone is not taken twice', () => {
    for (const kind of ['spare', 'contact', 'hire'] as const) {
      const with1 = done(RIG, addLine(RIG, kind, '2 Some thing, here', 'k1'));
      expect(listRig(done(with1, removeLine(with1, kind, 'k1')))).toEqual(listRig(RIG));
      expect(codeOf(removeLine(RIG, kind, 'k1'))).toBe('changes-nothing');
    }
  });

  it('[HO6] an outlet takes its cells along to another name', () => {
    const rig = applyEdits(RIG, [
      ...setCard('outlet', 'a', { name: 'A', to: 'rack' }),
      ...setCard('outlet', 'b', { name: 'B' }),
    ]);
    const { outlets } = recordOf(done(rig, renameOutlet(rig, 'a', ' C ')).cards);
    expect([...outlets.values()]).toMatchObject([{ name: 'B' }, { key: 'c', name: 'C', to: 'rack' }]);
    expect(codeOf(renameOutlet(rig, 'a', 'b'))).toBe('name-taken');
    expect(codeOf(renameOutlet(rig, 'a', ' '))).toBe('no-name');
    expect(codeOf(renameOutlet(rig, 'gone', 'D'))).toBe('no-such-card');
    expect(recordOf(done(rig, renameOutlet(rig, 'a', 'a')).cards).outlets.get('a')?.name).toBe('a');
  });
});

describe('positions of the house', () => {
  it('[HO1] are those in the order, then those that units, places and limits name', () => {
    const rig = applyEdits(RIG, [
      { kind: 'set-position', name: 'Bridge', order: 2 },
      { kind: 'set-position', name: 'Floor', order: 1 },
      ...setCard('place', 'pit', { position: 'Pit', trim: 1 }),
      ...setCard('limit', 'attic', { position: 'Attic', kilograms: 5 }),
      { kind: 'add-fixture', fixture: 'loose' as never, cells: { type: 'X' } },
    ]);
    const said = housePositions(rig).map(
      ({ name, load, place }) => `${name} ${load.units.length} ${place?.trim ?? '-'}`,
    );
    expect(said).toEqual(['Floor 1 -', 'Bridge 0 -', 'Attic 0 -', 'Bar 1 -', 'Pit 0 1']);
  });

  it('[HO3] one is added last in the order; one that is there is refused', () => {
    const bridge = done(RIG, addPlace(RIG, ' Bridge '));
    const both = done(bridge, addPlace(bridge, 'Pit'));
    expect(getRow(both.positions, 'pit')).toMatchObject({ name: 'Pit', order: 2 });
    expect([...recordOf(both.cards).places.keys()]).toEqual(['bridge', 'pit']);
    expect(codeOf(addPlace(both, 'BRIDGE'))).toBe('name-taken');
    expect(codeOf(addPlace(both, ' '))).toBe('no-name');
    expect(listRig(done(both, removePlace(both, 'pit')))).toEqual(listRig(bridge));
  });
});
