import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { tasksOf } from '#engine/diff/tasks.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { rigTaskSentence, taskUnit, unitTaskSentence } from './tasks.ts';

const a = fixtureId('a');
const b = fixtureId('b');
const set = (field: 'address' | 'mode' | 'circuit' | 'position' | 'notes' | 'type', value: string | number): Edit => ({
  kind: 'set-cell',
  fixture: a,
  field,
  value,
});
const rig = applyEdits(EMPTY_RIG, [
  {
    kind: 'add-fixture',
    fixture: a,
    cells: { position: 'Bar 1', unit: '4', type: 'Wash', mode: 'Short', address: 1, circuit: '12' },
  },
  ...setCard('circuit', '12', { name: '12', rating: 10 }),
]);
const said = (edits: readonly Edit[]): readonly string[] => {
  const { units, rig: rest } = tasksOf(rig, applyEdits(rig, edits));
  return [...units.map((task) => `${taskUnit(task)} | ${unitTaskSentence(task)}`), ...rest.map(rigTaskSentence)];
};

describe('what is to be done', () => {
  it('is said with what was and what is to be', () => {
    expect(said([set('address', 613), set('mode', 'Full'), set('circuit', '14')])).toEqual([
      'Bar 1 · 4 | Set the mode: Short → Full.',
      'Bar 1 · 4 | Set the address: 1:1 → 2:101.',
      'Bar 1 · 4 | Plug: circuit 12 → 14.',
    ]);
    expect(said([set('position', 'Bar 2'), set('type', 'Spot')])).toEqual([
      'Bar 1 · 4 | Move: Bar 1 · 4 → Bar 2 · 4.',
      'Bar 1 · 4 | Change the type: Wash → Spot.',
    ]);
    expect(said([{ kind: 'remove-fixture', fixture: a }])).toEqual(['Bar 1 · 4 | Take down Wash (Short).']);
    const hung: Edit = {
      kind: 'add-fixture',
      fixture: b,
      cells: { position: 'Bar 1', unit: '5', type: 'Wash', mode: 'Short', address: 21, colour: 'L201' },
    };
    expect(said([hung])).toEqual(['Bar 1 · 5 | Hang Wash (Short): address 1:21 and colour L201.']);
    expect(said([set('notes', 'low')])).toEqual(['Bar 1 · 4 | On paper: notes nothing → low.']);
  });

  it('is said of cards and of the record', () => {
    expect(said(setCard('circuit', '12', { rating: 16 }))).toEqual(['Change circuit 12: rating 10 → 16.']);
    expect(said(setCard('circuit', '13', { name: '13', rating: 16, phase: '1-2' }))).toEqual([
      'Add circuit 13: rating 16 and phase 1–2.',
    ]);
    expect(said(setCard('circuit', '12', { name: null, rating: null }))).toEqual(['Take circuit 12 out.']);
    expect(said([{ kind: 'set-note', note: noteId('n'), text: 'Rigging at 9', order: 1 }])).toEqual([
      'Add the note “Rigging at 9”.',
    ]);
  });

  it('has a sentence that ends, for whatever two rigs differ in', () => {
    for (let seed = 0; seed < 100; seed++) {
      const rng = seededRng(seed);
      const shape = { fixtures: 12, universes: 2 };
      const before = randomRig(seed, shape);
      const after = applyEdits(
        before,
        Array.from({ length: 30 }, () => randomEdit(rng, shape)),
      );
      const { units, rig: rest } = tasksOf(before, after);
      for (const sentence of [...units.map(unitTaskSentence), ...rest.map(rigTaskSentence)])
        expect(sentence).toMatch(/^[A-Z].*\.$/su);
    }
  });
});
