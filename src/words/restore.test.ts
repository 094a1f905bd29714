import { expect, it } from 'vitest';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { looseSentence, progressWords, tickWords } from './restore.ts';

it('says how far one is, with what stays and what is left', () => {
  expect(progressWords({ open: 3, done: 7, stays: 2 })).toBe('7 of 12 put back · 2 stay as they are · 3 to do');
  expect(progressWords({ open: 0, done: 1, stays: 1 })).toBe(
    '1 of 2 put back · 1 stays as it is · nothing is left to put back',
  );
});

it('says who ticked, whatever stands in the tick', () => {
  const tick = { key: 'k', state: 'done', by: 'Ona Reeve', at: 'some time' } as const;
  expect(tickWords(tick)).toBe('Ona Reeve');
  expect(tickWords({ ...tick, by: '' })).toBe('');
});

it('names a tick whose line is gone by its unit, as long as one rig still has that', () => {
  const rig = applyEdits(EMPTY_RIG, [
    { kind: 'add-fixture', fixture: fixtureId('a'), cells: { position: 'Bar 1', unit: '4' } },
  ]);
  const tick = { key: 'k', state: 'done', by: 'Ona', at: '' } as const;
  const said = (task: string) => looseSentence({ task, tick }, [EMPTY_RIG, rig]);
  expect(said('a set-address')).toBe('Bar 1 · 4: Set the address · done · Ona');
  expect(said('b move')).toBe('A unit that is gone: Move · done · Ona');
  for (const task of ['card limit\u001fbar 1', '', ' ', 'a', 'note \u0000'])
    expect(said(task)).toBe('Something of the rig · done · Ona');
});
