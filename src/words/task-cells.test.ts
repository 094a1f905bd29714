import { describe, expect, it } from 'vitest';
import { tasksOf } from '#engine/diff/tasks.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { portKey } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId, noteId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { changedUnit, differenceSentence, unitAbout } from './compare.ts';
import { rigTaskCells, unitTaskCells } from './task-cells.ts';
import { rigTaskSentence } from './tasks.ts';

const unit = (name: string, cells: object): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { position: 'Bar 1', unit: name, type: 'Wash', mode: 'Short', ...cells },
});
const set = (field: 'address' | 'address2' | 'mode' | 'run' | 'along' | 'type', value: string | number): Edit => ({
  kind: 'set-cell',
  fixture: fixtureId('4'),
  field,
  value,
});
const rig = applyEdits(EMPTY_RIG, [
  unit('4', { address: 1, channel: 12 }),
  { kind: 'set-mode', type: 'Wash', mode: 'Short', footprints: [10] },
  ...setCard('circuit', '12', { name: '12', rating: 10 }),
  ...setCard('node', 'n1', { name: 'West', role: 'node', ports: 4 }),
]);
const said = (edits: readonly Edit[]): readonly string[] => {
  const after = applyEdits(rig, edits);
  const { units, rig: rest } = tasksOf(rig, after);
  return [
    ...units.map((task) => ({ name: changedUnit(task), ...unitTaskCells(task) })),
    ...rest.map((task) => ({ name: '', ...rigTaskCells(task) })),
  ].map(({ name, what, before, after: to }) => `${name} | ${what} | ${before} | ${to}`);
};

describe('a task in columns', () => {
  it('says what was and what is to be, and names fields only where there may be several', () => {
    expect(said([set('address', 613)])).toEqual(['Bar 1 · 4 | Set the address | 1:1 | 2:101']);
    expect(said([set('address', 613), set('address2', 40)])).toEqual([
      'Bar 1 · 4 | Set the address | address 1:1, address of break 2 nothing | address 2:101, address of break 2 1:40',
    ]);
    expect(said([set('type', 'Spot'), set('run', 'A')])).toEqual([
      'Bar 1 · 4 | Change the type | Wash | Spot',
      'Bar 1 · 4 | Wire | run nothing | run A',
    ]);
  });

  it('says a unit that comes and one that goes on their own side', () => {
    expect(said([unit('5', { address: 21 })])).toEqual(['Bar 1 · 5 | Hang |  | Wash (Short): address 1:21']);
    expect(said([{ kind: 'remove-fixture', fixture: fixtureId('4') }])).toEqual([
      'Bar 1 · 4 | Take down | Wash (Short) | ',
    ]);
  });

  it('says cards and the record by what they are, a port by its node', () => {
    expect(said(setCard('circuit', '12', { rating: 16 }))).toEqual([' | Feeds: circuit 12 | rating 10 | rating 16']);
    const port = setCard('port', portKey('n1', 3), { by: 'sacn', number: 7 });
    expect(said(port)).toEqual([' | Network: port 3 of node West |  | protocol sACN, number it listens to 7']);
    const after = applyEdits(rig, port);
    expect(tasksOf(rig, after).rig.map((task) => rigTaskSentence(task))).toEqual([
      'Add port 3 of node West: protocol sACN and number it listens to 7.',
    ]);
    expect(said([{ kind: 'set-mode', type: 'Wash', mode: 'Short', footprints: [12] }])).toEqual([
      ' | In the record: the mode Short of Wash | 10 slots | 12 slots',
    ]);
    expect(said([{ kind: 'set-note', note: noteId('n'), text: 'Rigging at 9', order: 1 }])).toEqual([
      ' | In the record: the note “Rigging at 9” |  | Rigging at 9',
    ]);
  });

  it('is counted in one sentence', () => {
    const sentence = (edits: readonly Edit[]) =>
      differenceSentence(tasksOf(rig, applyEdits(rig, edits)), 'revision 3', 'now');
    expect(sentence([])).toBe('Nothing differs between revision 3 and now.');
    expect(sentence([set('address', 7), set('mode', 'Full'), ...setCard('circuit', '12', { rating: 16 })])).toBe(
      'From revision 3 to now: 2 things to do at 1 unit, and 1 thing for the whole rig.',
    );
  });

  it('knows a unit by channel, type and mode', () => {
    const after = applyEdits(rig, [unit('6', { type: '' })]);
    const abouts = tasksOf(EMPTY_RIG, after).units.map(({ after: row }) => (row === undefined ? '' : unitAbout(row)));
    expect(abouts).toEqual(['channel 12 · Wash (Short)', '']);
  });
});
