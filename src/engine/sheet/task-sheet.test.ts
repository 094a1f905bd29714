import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { TASK_STANDING } from '#words/task-cells.ts';
import { tasksOf } from '../diff/tasks.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import type { Edit } from '../model/edit.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { taskLines, taskSheet } from './task-sheet.ts';

const SHAPE = { fixtures: 20, universes: 3 };
const SEEDS = Array.from({ length: 100 }, (_, seed) => seed);

function pair(seed: number): readonly [Rig, Rig] {
  const rng = seededRng(seed + 90_000);
  const before = randomRig(seed, SHAPE);
  if (rng.int(4) === 0) return [before, randomRig(seed + 1000, SHAPE)];
  const edits = Array.from({ length: rng.int(40) }, () => randomEdit(rng, SHAPE));
  return [before, applyEdits(before, edits)];
}

const sheetOf = (before: Rig, after: Rig) => taskSheet(tasksOf(before, after), after, TASK_STANDING);
const rowsOf = (before: Rig, after: Rig) => [...sheetOf(before, after).rows];
const footOf = (before: Rig, after: Rig) =>
  sheetOf(before, after).foot.flatMap((line) => (line.kind === 'caution' ? [line.text] : []));

describe('a change sheet', () => {
  it('[DF7] has a row for each thing to do: all of them done make the rigs equal', () => {
    for (const seed of SEEDS) {
      const [before, after] = pair(seed);
      const tasks = tasksOf(before, after);
      const lines = taskLines(tasks);
      const sheet = taskSheet(tasks, after, TASK_STANDING);
      const rows = [...sheet.rows];
      expect([rows.length, sheet.length], `seed ${seed}`).toEqual([lines.length, lines.length]);
      expect(new Set(lines.map(({ task }) => task.key))).toEqual(
        new Set([...tasks.units, ...tasks.rig].map(({ key }) => key)),
      );
      const done = lines.reduce((rig, { task }) => applyEdits(rig, task.edits), before);
      expect(done, `seed ${seed}`).toEqual(after);
      for (const row of rows) expect(row[3]).not.toBe('');
    }
  });

  it('[DF7] has none to spare: without any one of them the rigs are unlike', () => {
    for (const seed of SEEDS.slice(0, 4)) {
      const [before, after] = pair(seed);
      const lines = taskLines(tasksOf(before, after));
      for (const left of lines) {
        const others = lines.filter((line) => line !== left);
        const done = others.reduce((rig, { task }) => applyEdits(rig, task.edits), before);
        expect(done, `seed ${seed}, ${left.task.key}`).not.toEqual(after);
      }
    }
  });

  it('[DF7] keeps the lines of a position and of a unit together', () => {
    for (const seed of SEEDS) {
      const lines = taskLines(tasksOf(...pair(seed)));
      const places = lines.map(({ at, task }) => (at === 'unit' ? task.position.trim().toLowerCase() : task.kind));
      const runs = places.filter((place, at) => place !== places[at - 1]).map((place) => place.replace(/\s+/g, ' '));
      expect(new Set(runs).size, `seed ${seed}: ${runs.join(' | ')}`).toBe(
        new Set(places.map((p) => p.replace(/\s+/g, ' '))).size,
      );
    }
  });

  const unit = (name: string, cells: object): Edit => ({
    kind: 'add-fixture',
    fixture: fixtureId(name),
    cells: { position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', ...cells },
  });
  const set = (name: string, field: 'address' | 'position' | 'circuit' | 'channel', value: string | number): Edit => ({
    kind: 'set-cell',
    fixture: fixtureId(name),
    field,
    value,
  });
  const rig = applyEdits(EMPTY_RIG, [
    unit('1', { address: 1, channel: 11 }),
    unit('2', { address: 21 }),
    unit('10', { address: 41 }),
  ]);

  it('goes along the position and says what was and what is to be', () => {
    const after = applyEdits(rig, [
      set('10', 'address', 613),
      set('2', 'position', 'Bar 2'),
      set('1', 'channel', 12),
      ...setCard('circuit', '12', { name: '12', rating: 16 }),
    ]);
    expect(rowsOf(rig, after)).toEqual([
      ['Bar 1', '1', 12, 'On paper', 'channel 11', 'channel 12'],
      ['Bar 1', '10', null, 'Set the address', '1:41', '2:101'],
      ['Bar 2', '2', null, 'Move', 'Bar 1 · 2', 'Bar 2 · 2'],
      ['', '', null, 'Feeds: circuit 12', '', 'name 12, rating 16'],
    ]);
  });

  it('[DF8] cautions who lifts and who plugs, and nobody else', () => {
    expect(footOf(rig, applyEdits(rig, [set('1', 'channel', 9)]))).toEqual([]);
    expect(footOf(rig, applyEdits(rig, [set('1', 'position', 'Bar 2')]))).toEqual(TASK_STANDING.positionCautions);
    expect(footOf(rig, applyEdits(rig, [set('1', 'circuit', '4')]))).toEqual(TASK_STANDING.circuitCautions);
    expect(footOf(rig, applyEdits(rig, [unit('4', {})]))).toEqual([
      ...TASK_STANDING.positionCautions,
      ...TASK_STANDING.circuitCautions,
    ]);
  });
});
