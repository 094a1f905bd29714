import { describe, expect, it } from 'vitest';
import { statedRig } from '#tests/support/stated-rig.ts';
import { standingOf } from '#words/sheets.ts';
import type { Rig } from '../model/rig.ts';
import { makeSheet } from './make-sheet.ts';
import type { SheetKind } from './sheet.ts';

const RIG = statedRig(
  [
    { position: 'LX 1', unit: '1', circuit: 'C2', type: 'Par' },
    { position: 'LX 1', unit: '2', circuit: 'C10', type: 'Par' },
    { position: 'LX 1', unit: '10', circuit: 'C2', type: 'Fan' },
    { position: 'Boom', unit: '1', circuit: '', type: 'Fan' },
  ],
  {
    Par: { power: 1000, powerFactor: 1, weight: 4.1, perBreaker: [{ breaker: 'B16', most: '3 at 230 V' }] },
    Fan: { power: 100 / 3, weight: null },
  },
);

function rowsOf(kind: SheetKind, rig: Rig, columns: readonly string[]): string[] {
  const sheet = makeSheet(kind, rig, standingOf(rig, []));
  const at = columns.map((column) => (sheet.columns as readonly string[]).indexOf(column));
  return [...sheet.rows].map((row) => at.map((i) => (row[i] === '' ? '-' : (row[i] ?? '-'))).join(' | '));
}

const footOf = (kind: SheetKind) =>
  makeSheet(kind, RIG, standingOf(RIG, [])).foot.map((line) => (line.kind === 'caution' ? line.text : line.kind));

describe('circuit sheet', () => {
  it('[SU8] one row for each circuit, with the voltage and the rule beside each figure', () => {
    const columns = ['circuit', 'count', 'watts', 'amps', 'volts', 'rule', 'unknown', 'factorless', 'perBreaker'];
    expect(rowsOf('circuits', RIG, columns)).toEqual([
      'C2 | 2 | 1033.3 | 4.49 | 230 | all of a breaker’s rating | 0 | 1 | Par: B16: 3 at 230 V',
      'C10 | 1 | 1000 | 4.35 | 230 | all of a breaker’s rating | 0 | 0 | Par: B16: 3 at 230 V',
      '- | 1 | 33.3 | 0.14 | 230 | all of a breaker’s rating | 0 | 1 | -',
    ]);
    expect(rowsOf('circuits', RIG, ['units'])).toEqual(['LX 1 · 1, LX 1 · 10', 'LX 1 · 2', 'Boom · 1']);
  });

  it('[SU8] has no figure, rather than 0, where not one unit is known', () => {
    const rig = statedRig([{ circuit: 'C1', type: 'Fan' }], { Fan: null });
    expect(rowsOf('circuits', rig, ['circuit', 'watts', 'amps', 'rating', 'unknown'])).toEqual(['C1 | - | - | - | 1']);
  });

  it('[SU8] says at its foot by which rules, and who has the last word', () => {
    const foot = footOf('circuits').join(' ');
    expect(foot).toMatch(/230 V.*planning aids.*Local codes.*licensed electrician has the last word/);
  });
});

describe('position sheet', () => {
  it('[SU8] one row for each unit, with the sum and what is not known in the last of a position', () => {
    expect(rowsOf('positions', RIG, ['position', 'unit', 'weight', 'sum', 'unknown'])).toEqual([
      'Boom | 1 | - | - | 1',
      'LX 1 | 1 | 4.1 | - | -',
      'LX 1 | 2 | 4.1 | - | -',
      'LX 1 | 10 | - | 8.2 | 1',
    ]);
  });

  it('[SU8] says at its foot what the weights are without, and who has the last word', () => {
    expect(footOf('positions').join(' ')).toMatch(/without clamps.*no structural calculation.*competent rigger/);
  });
});
