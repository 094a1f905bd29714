import { expect, it } from 'vitest';
import { rowsOf } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import { fixtureId, modeId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { byType, formatSlots, modesInUse, parseSlots, renameMode, renameType } from './modes-in-use.ts';

const units: Edit[] = ['Wide', 'wide', 'Narrow', ''].map((mode, n) => ({
  kind: 'add-fixture',
  fixture: fixtureId(`f${n}`),
  cells: { type: 'Spot', mode },
}));
const rig = applyEdits(EMPTY_RIG, [...units, { kind: 'set-mode', type: 'Spot', mode: 'Wide', footprints: [20, 1] }]);

it('counts the units of each mode and lists what the rig does not know', () => {
  const { known, unknown, units } = modesInUse(rig);
  expect(known.map(({ mode }) => mode)).toEqual(['Wide']);
  expect(units.get(modeId('Spot', 'Wide'))).toBe(2);
  expect(unknown.map(({ mode }) => mode)).toEqual(['', 'Narrow']);
});

it('renames a mode or a type with its units, so that none of them loses its slots', () => {
  const { known } = modesInUse(rig);
  const [mode] = known;
  if (mode === undefined) throw new Error('no mode');
  for (const [plan, type, name] of [
    [renameMode(rig, mode, 'Basic'), 'Spot', 'Basic'],
    [renameMode(rig, mode, 'WIDE'), 'Spot', 'WIDE'],
    [renameMode(rig, mode, ''), 'Spot', ''],
    [renameType(rig, known, 'Spot 2'), 'Spot 2', 'Wide'],
    [renameType(rig, known, 'SPOT'), 'SPOT', 'Wide'],
  ] as const) {
    const after = applyEdits(rig, plan.edits);
    const set = [...rowsOf(after.fixtures)].filter((fixture) => modeOf(after, fixture) !== undefined);
    expect(set.length).toBeGreaterThanOrEqual(2);
    expect(modesInUse(after).known.map((each) => [each.type, each.mode])).toEqual([[type, name]]);
  }
});

it('gathers the modes of a type however it is spelt', () => {
  const more = applyEdits(rig, [
    { kind: 'set-mode', type: 'spot', mode: 'Basic', footprints: [8] },
    { kind: 'set-mode', type: 'Wash', mode: 'Plain', footprints: [4] },
  ]);
  const groups = byType(modesInUse(more).known).map((modes) => modes.map(({ mode }) => mode).join(' '));
  expect(groups.sort()).toEqual(['Plain', 'Wide Basic']);
});

it.each([
  ['27', [27]],
  [' 1 + 1 ', [1, 1]],
  ['10 20', [10, 20]],
  ['0+4', [0, 4]],
  ['512', [512]],
  ['513', undefined],
  ['0', undefined],
  ['', undefined],
  ['1 2 3 4 5', undefined],
  ['1.5', undefined],
  ['-3', undefined],
  ['many', undefined],
])('reads %j as slots', (text, slots) => {
  expect(parseSlots(text)).toEqual(slots);
  if (slots !== undefined) expect(parseSlots(formatSlots(slots))).toEqual(slots);
});
