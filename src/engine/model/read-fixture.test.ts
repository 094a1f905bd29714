import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from './apply-edits.ts';
import type { Edit } from './edit.ts';
import { FIELDS } from './field.ts';
import { fixtureId, noteId } from './ids.ts';
import { cellOf, cellsOf, readFixture } from './read-fixture.ts';
import { EMPTY_RIG } from './rig.ts';

describe('readFixture', () => {
  it('[AD5] reads what its own cells say, whatever is in them', () => {
    for (let seed = 1; seed <= 60; seed++) {
      for (const fixture of rowsOf(randomRig(seed, { fixtures: 50, universes: 3 }).fixtures)) {
        expect(readFixture(fixture.id, cellsOf(fixture))).toEqual(fixture);
      }
    }
  });

  it.each([
    ['channel', '12 or 13'],
    ['channel', 0],
    ['channel', 2.5],
    ['channel', 1_000_000],
    ['address', '2:513'],
    ['address', 0],
    ['address', 63999 * 512 + 1],
    ['address3', -4],
    ['order', 'first'],
  ] as const)('[AD5] keeps %s %j as it stands, and reads it as empty', (field, value) => {
    const fixture = readFixture(fixtureId('f1'), { [field]: value });
    expect(fixture.unreadable).toEqual([{ field, value }]);
    expect(cellOf(fixture, field)).toBe(value);
    expect({ channel: fixture.channel, addresses: fixture.addresses }).toEqual({ channel: null, addresses: [] });
  });

  it('[AD5] keeps a gap between breaks, and no trailing one', () => {
    expect(readFixture(fixtureId('f1'), { address2: 7, address3: null }).addresses).toEqual([null, 7]);
  });
});

describe('applyEdits', () => {
  it('[AD6] is the same edit by edit and all at once', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const shape = { fixtures: 20, universes: 2 };
      const rng = seededRng(seed);
      const rig = randomRig(seed, shape);
      const edits = Array.from({ length: 60 }, () => randomEdit(rng, shape));
      let step = rig;
      for (const edit of edits) step = applyEdits(step, [edit]);
      expect(applyEdits(rig, edits)).toEqual(step);
    }
  });

  it('[AD6] gives a set cell its value, and keeps every other cell and row', () => {
    const rig = rigOf('1:1 Spot/16 x5 #1 @LX.1');
    const edit: Edit = { kind: 'set-cell', fixture: fixtureId('f3'), field: 'purpose', value: 'front' };
    const after = applyEdits(rig, [edit]);
    for (const fixture of rowsOf(rig.fixtures)) {
      const now = [...rowsOf(after.fixtures)].find(({ id }) => id === fixture.id);
      if (fixture.id !== 'f3') expect(now).toBe(fixture);
      else
        for (const field of FIELDS)
          expect(now && cellOf(now, field)).toBe(field === 'purpose' ? 'front' : cellOf(fixture, field));
    }
    expect(after.modes).toBe(rig.modes);
  });

  it('[AD6] does nothing to a fixture that is not there, and says so by giving the same rig', () => {
    const rig = rigOf('1:1 Spot/16');
    expect(applyEdits(rig, [{ kind: 'set-cell', fixture: fixtureId('gone'), field: 'unit', value: '4' }])).toBe(rig);
    expect(applyEdits(rig, [{ kind: 'remove-fixture', fixture: fixtureId('gone') }])).toBe(rig);
    expect(applyEdits(rig, [{ kind: 'set-cell', fixture: fixtureId('f1'), field: 'mode', value: '16' }])).toBe(rig);
  });

  it('[AD6] writes and takes away what is not a fixture', () => {
    const made: Edit[] = [
      { kind: 'set-mode', type: 'Spot', mode: '16', footprints: [16] },
      { kind: 'set-position', name: 'LX 1', order: 2 },
      { kind: 'set-universe', universe: 3 as never, label: 'floor' },
      { kind: 'set-note', note: noteId('n1'), text: 'check the boom', order: 1 },
    ];
    const undone: Edit[] = [
      { kind: 'remove-mode', type: 'spot ', mode: '16' },
      { kind: 'remove-position', name: 'lx  1' },
      { kind: 'set-universe', universe: 3 as never, label: '' },
      { kind: 'remove-note', note: noteId('n1') },
    ];
    const rig = applyEdits(EMPTY_RIG, made);
    expect([rig.modes.size, rig.positions.size, rig.universes.size, rig.notes.size]).toEqual([1, 1, 1, 1]);
    expect(applyEdits(rig, undone)).toEqual(EMPTY_RIG);
  });
});
