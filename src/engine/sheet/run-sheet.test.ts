import { describe, expect, it } from 'vitest';
import { describedRun, lineRig } from '#tests/support/line-rig.ts';
import { standingOf } from '#words/sheets.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import { makeSheet } from './make-sheet.ts';

const RIG = applyEdits(
  lineRig([
    { id: 'a', position: 'LX 1', unit: '1', run: 'A', along: 2, cable: 3, address: 17 },
    { id: 'b', position: 'LX 1', unit: '2', run: 'A', along: 1, address: 1 },
    { id: 'c', position: 'LX 2', unit: '1', run: 'B', address: 513 },
    { id: 'd', position: 'LX 2', unit: '2', address: 529 },
  ]),
  [
    ...describedRun('A', { from: 'cable 1', lead: 20, end: 'open' }),
    ...describedRun('Empty'),
    ...setCard('splitter', 's', { name: 'Split', run: 'A', along: 3, cable: 1.5, outputs: 4 }),
  ],
);

const sheet = makeSheet('runs', RIG, standingOf(RIG, checkRig(RIG)));
const cells = (...columns: readonly string[]) =>
  [...sheet.rows].map((row) =>
    columns.map((column) => row[(sheet.columns as readonly string[]).indexOf(column)] ?? '-').join(' | '),
  );

describe('the run sheet', () => {
  it('[RN19] goes run by run along the line, with metres and loads so far', () => {
    expect(cells('run', 'runFrom', 'runPlace', 'runLink', 'position', 'unit', 'universe', 'slot')).toEqual([
      'A | the desk, universe 1 | 1 | unit | LX 1 | 2 | 1 | 1',
      'A | the desk, universe 1 | 2 | unit | LX 1 | 1 | 1 | 17',
      'A | the desk, universe 1 | 3 | splitter Split | - | - | - | -',
      'B | not said | 1 | unit | LX 2 | 1 | 2 | 1',
      'Empty | not said | - | - | - | - | - | -',
    ]);
    expect(cells('cable', 'runMetres', 'runUnknown', 'runLoads')).toEqual([
      '20 | 20 | 0 | 1',
      '3 | 23 | 0 | 2',
      '1.5 | 24.5 | 0 | 3',
      '- | 0 | 1 | 1',
      '- | - | - | -',
    ]);
  });

  it('[RN19] has what is found beside the unit it names, and all findings at its foot', () => {
    expect(
      cells('runFindings')
        .map((said) => said.replace(/“.*/, ''))
        .slice(1, 4),
    ).toEqual(['caution: Run ', '-', 'note: Nobody has described run ']);
    expect(sheet.foot.filter(({ kind }) => kind === 'finding').length).toBe(checkRig(RIG).length);
    expect([...sheet.rows].length).toBe(sheet.length);
  });
});
