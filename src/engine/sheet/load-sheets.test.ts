import { describe, expect, it } from 'vitest';
import { statedRig } from '#tests/support/stated-rig.ts';
import { standingOf } from '#words/sheets.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { SETUP_KEY } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
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
  const sheet = makeSheet(kind, rig, standingOf(rig, checkRig(rig)));
  const rows = [...sheet.rows];
  expect(rows.length).toBe(sheet.length);
  const at = columns.map((column) => (sheet.columns as readonly string[]).indexOf(column));
  return rows.map((row) => at.map((i) => (row[i] === '' ? '-' : (row[i] ?? '-'))).join(' | '));
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

/** The same with what feeds it and what may hang there said. */
const SAID = applyEdits(RIG, [
  ...setCard('setup', SETUP_KEY, { volts: 230, share: 0.8, rules: 'house rules' }),
  ...setCard('supply', 'mains', { name: 'Mains', phases: '3' }),
  ...setCard('circuit', 'c2', { name: 'C2', supply: 'Mains', phase: '2', breaker: 'B5', rating: 5 }),
  ...setCard('circuit', 'c3', { name: 'C3', rating: 16 }),
  ...setCard('limit', 'lx 1', { position: 'LX 1', kilograms: 20, extra: 15, person: 'Ona Reeve', on: '2026-11-25' }),
  ...setCard('limit', 'pit', { position: 'Pit', kilograms: 100 }),
]);

describe('sheets of what is fed and what hangs', () => {
  it('[SU8] the circuit sheet has supply, phase and breaker, how much of it is used by which rules, and what stands', () => {
    const columns = [
      'circuit',
      'supply',
      'phase',
      'breaker',
      'breakerAmps',
      'count',
      'voltAmps',
      'amps',
      'rule',
      'used',
    ];
    expect(rowsOf('circuits', SAID, columns)).toEqual([
      'C2 | Mains | 2 | B5 | 5 | 2 | 1033.3 | 4.49 | 80 % of a breaker’s rating, by house rules | 112.3',
      'C3 | - | - | - | 16 | 0 | 0 | 0 | 80 % of a breaker’s rating, by house rules | 0',
      'C10 | - | - | - | - | 1 | 1000 | 4.35 | 80 % of a breaker’s rating, by house rules | -',
      '- | - | - | - | - | 1 | 33.3 | 0.14 | 80 % of a breaker’s rating, by house rules | -',
    ]);
    expect(rowsOf('circuits', SAID, ['circuit', 'standing'])).toEqual([
      'C2 | Circuit “C2” draws 4.49 A, more than the 80 % of 5 A that it may carry for hours by house rules: LX 1 · 1 and LX 1 · 10',
      'C3 | -',
      'C10 | Circuit “C10” is not described, though others are: LX 1 · 2',
      '- | -',
    ]);
  });

  it('[SU8] the position sheet has the limit, by whom and when, and what is left of it; a position without units has a row', () => {
    const columns = ['position', 'unit', 'count', 'sum', 'unknown', 'extra', 'limit', 'person', 'on', 'remaining'];
    expect(rowsOf('positions', SAID, columns).filter((row) => !row.endsWith(' - | - | - | - | - | - | - | -'))).toEqual(
      [
        'Boom | 1 | 1 | - | 1 | - | - | - | - | -',
        'LX 1 | 10 | 3 | 8.2 | 1 | 15 | 20 | Ona Reeve | 2026-11-25 | -3.2',
        'Pit | - | 0 | 0 | 0 | 0 | 100 | - | - | 100',
      ],
    );
    const standing = rowsOf('positions', SAID, ['position', 'standing']).filter((row) => !row.endsWith('| -'));
    expect(standing).toEqual([
      'LX 1 | “LX 1” holds 23.2 kg; Ona Reeve allows 20 kg, as of 2026-11-25. Take weight off, or ask a rigger; “LX 1” holds more than is reckoned: nobody knows the weight of LX 1 · 10',
      'Pit | Nobody is named who allows 100 kg at “Pit”. Name the person responsible',
    ]);
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
