import { expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { changesOf } from '#engine/history/changes-of.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { changeSentence, stepSentence } from './history.ts';
import { nameOfRow } from './history-names.ts';

const A = fixtureId('a');
const cells = { position: 'Bar 1', unit: '4', type: 'Wash', mode: 'A', address: 101 };
const START = applyEdits(EMPTY_RIG, [
  { kind: 'add-fixture', fixture: A, cells },
  ...setCard('circuit', '12', { name: '12', rating: 16 }),
]);
const set = (
  field: 'address' | 'address2' | 'circuit' | 'lock' | 'order' | 'notes',
  value: string | number | null,
): Edit => ({
  kind: 'set-cell',
  fixture: A,
  field,
  value,
});
const told = (edits: readonly Edit[]) =>
  changesOf(START, applyEdits(START, edits)).map(({ change, of }, nth) => ({
    ...{ nth, name: nameOfRow(change.part, of), long: false, change },
  }));
const say = (...edits: readonly Edit[]) => told(edits).map(changeSentence);

it('says what was done to a unit as one would tell it', () => {
  expect(say(set('address', 513))).toEqual(['moved Bar 1 · 4 from 1:101 to 2:1']);
  expect(say(set('address', null))).toEqual(['took the address 1:101 from Bar 1 · 4']);
  expect(say(set('address2', 1))).toEqual(['gave break 2 of Bar 1 · 4 the address 1:1']);
  expect(say(set('circuit', '12'))).toEqual(['set the circuit of Bar 1 · 4 to “12”']);
  expect(say(set('lock', 'focused'))).toEqual(['locked Bar 1 · 4 (focused)']);
  expect(say(set('order', 3))).toEqual(['moved Bar 1 · 4 in the sheet']);
  expect(say({ kind: 'remove-fixture', fixture: A })).toEqual(['removed Bar 1 · 4']);
  expect(say({ kind: 'add-fixture', fixture: fixtureId('b'), cells: { ...cells, unit: '5' } })).toEqual([
    'added Bar 1 · 5, a Wash, at 1:101',
  ]);
});

it('says what was done to the rest of a rig', () => {
  expect(say(...setCard('circuit', '12', { rating: 32 }))).toEqual(['set the rating of circuit 12 from 16 to 32']);
  expect(say(...setCard('setup', 'rig', { volts: 230 }))).toEqual(['added the set-up']);
  expect(say({ kind: 'set-universe', universe: 3 as never, label: 'Front' })).toEqual([
    'set the name of universe 3 to “Front”',
  ]);
  expect(say({ kind: 'set-position', name: 'Bar 2', order: 1 })).toEqual(['added the position Bar 2']);
  expect(say({ kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] })).toEqual(['took the mode Wash · A in']);
});

it('counts what is more than one sentence holds', () => {
  const counts = [
    { part: 'unit', card: null, what: 'added', field: null, count: 152 },
    { part: 'unit', card: null, what: 'set', field: 'address', count: 12 },
    { part: 'card', card: 'supply', what: 'removed', field: null, count: 2 },
  ] as const;
  expect(stepSentence({ total: 166, changes: [], counts })).toBe(
    'added 152 units, removed 2 supplies and set the address of 12 units',
  );
});

it('has a sentence for whatever can change', () => {
  for (let seed = 0; seed < 200; seed++) {
    const rng = seededRng(seed);
    const before = applyEdits(EMPTY_RIG, randomPlan(rng, 6, 20).edits);
    for (const { change, of } of changesOf(before, applyEdits(before, randomPlan(rng, 6, 20).edits))) {
      const name = nameOfRow(change.part, of);
      for (const long of [false, true]) {
        const sentence = changeSentence({ nth: 0, name, long, change });
        expect(sentence, `seed ${seed}`).not.toMatch(/undefined|null|\[object|NaN/);
        expect(sentence.length).toBeGreaterThan(6);
      }
    }
  }
});
