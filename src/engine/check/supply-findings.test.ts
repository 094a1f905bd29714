import { describe, expect, it } from 'vitest';
import { statedRig } from '#tests/support/stated-rig.ts';
import { findingSentence } from '#words/findings.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { SETUP_KEY } from '../model/card.ts';
import { setCard } from '../model/card-edits.ts';
import type { Edit } from '../model/edit.ts';
import type { Physical } from '../model/fixture-type.ts';
import { checkRig } from './check-rig.ts';

const ELSE = new Set(['unpatched', 'same-place']);

const TYPES: Readonly<Record<string, Partial<Physical> | null>> = {
  Par: { power: 1000, powerFactor: 1, weight: 4 },
  Lamp: { power: 230, powerFactor: 1, voltage: { low: 220, high: 240 } },
  Panel: { power: 75, powerFactor: 1, perBreaker: [{ breaker: 'B16', most: '3 at 230 V' }] },
  Strip: { power: 75, powerFactor: 1, perBreaker: [{ breaker: '16 A, 230 V', most: '3 units' }] },
  Curve: { power: 75, powerFactor: 1, perBreaker: [{ breaker: '16 A, 230 V, type C', most: '4 units' }] },
  Ghost: null,
};

const VOLTS = setCard('setup', SETUP_KEY, { volts: 230 });
const SHARE = setCard('setup', SETUP_KEY, { volts: 230, share: 0.8, rules: 'house rules' });

/** `C1 Par x4` is four units of a type on a circuit; `@LX 1` hangs them there. */
function found(units: string, ...cards: readonly (readonly Edit[])[]): string[] {
  const rows = units.split('\n').flatMap((line) => {
    const [, circuit = '', type = '', count = '1', position = ''] =
      /^(\S+) (\S+)(?: x(\d+))?(?: @(.+))?$/.exec(line) ?? [];
    return Array.from({ length: Number(count) }, (_, at) => ({
      circuit: circuit === '-' ? '' : circuit,
      type,
      position,
      unit: String(at + 1),
    }));
  });
  const rig = applyEdits(statedRig(rows, TYPES), cards.flat());
  return checkRig(rig)
    .filter(({ rule }) => !ELSE.has(rule))
    .map((finding) => `${finding.severity} ${finding.rule}: ${findingSentence(finding, rig)}`);
}

const circuit = (name: string, cells: Parameters<typeof setCard<'circuit'>>[2]) =>
  setCard('circuit', name.toLowerCase(), { name, ...cells });
const mains = (cells: Parameters<typeof setCard<'supply'>>[2]) =>
  setCard('supply', 'mains', { name: 'Mains', ...cells });
const limit = (cells: Parameters<typeof setCard<'limit'>>[2]) =>
  setCard('limit', 'lx 1', { position: 'LX 1', ...cells });

describe('findings of circuits', () => {
  it('[SP1] a circuit that draws more than its breaker is made for is a blocker; what just fills it is none', () => {
    expect(found('C1 Par x4', VOLTS, circuit('C1', { rating: 16 }))).toEqual([
      'blocker circuit-over-rating: Circuit “C1” draws 17.39 A; its breaker is made for 16 A. Put some of its units on another: 1, 2, 3 and 4',
    ]);
    expect(found('C1 Lamp x16', VOLTS, circuit('C1', { rating: 16 }))).toEqual([]);
  });

  it('[SP2] one that draws more than the venue’s share for hours is a caution, with the rules by name', () => {
    expect(found('C1 Lamp x13', SHARE, circuit('C1', { rating: 16 }))).toEqual([
      'caution circuit-over-share: Circuit “C1” draws 13 A, more than the 80 % of 16 A that it may carry for hours by house rules: 1, 2, 3, 4, 5, 6 and 7 more',
    ]);
    expect(found('C1 Lamp x13', VOLTS, circuit('C1', { rating: 16 }))).toEqual([]);
    // Row 148 of the check values: 80 % of 20 A is 16 A.
    expect(found('C1 Lamp x16', SHARE, circuit('C1', { rating: 20 }))).toEqual([]);
  });

  it('[SP7] units of unknown power are counted and named, never taken for nothing', () => {
    expect(found('C1 Par\nC1 Ghost x2', VOLTS, circuit('C1', { rating: 16 }))).toEqual([
      'caution circuit-power-unknown: Circuit “C1” draws more than is reckoned: nobody knows the power of 1 and 2',
    ]);
  });

  it('[SP8] a supply that is gone, [SP9] a phase that the supply has not, or none of three', () => {
    expect(found('C1 Par', VOLTS, circuit('C1', { supply: 'Elsewhere', phase: '1' }))).toEqual([
      'caution circuit-supply-gone: Circuit “C1” is on “Elsewhere”, which is no supply here. Describe it, or choose another',
    ]);
    expect(found('C1 Par', VOLTS, mains({ phases: '1' }), circuit('C1', { supply: 'mains', phase: '2' }))).toEqual([
      'caution circuit-phase: Circuit “C1” is on phase 2 of “Mains”, which has one phase. Choose another',
    ]);
    expect(found('C1 Par', VOLTS, mains({ phases: '3' }), circuit('C1', { supply: 'mains' }))).toEqual([
      'caution circuit-phase: Circuit “C1” is on no phase of “Mains”, which has three, so that no line is reckoned with it. Say which',
    ]);
    expect(found('C1 Par', VOLTS, mains({ phases: '1' }), circuit('C1', { supply: 'mains' }))).toEqual([]);
  });

  it('[SP10] more units than the manual allows on such a breaker, which is told by what is written on it', () => {
    const crowd = (breaker: string) => found('C1 Panel x4', VOLTS, circuit('C1', { rating: 16, breaker }));
    expect(crowd('b 16 A')).toEqual([
      'caution circuit-crowded: Circuit “C1” has 4 of “Panel”; on B16 its manual allows 3: 1, 2, 3 and 4',
    ]);
    expect(crowd('C16')).toEqual([]);
    expect(crowd('B10')).toEqual([]);
    // Nobody said which curve it has.
    expect(crowd('')).toEqual([]);
    const rated = (rating: number, volts: number) =>
      found('C1 Strip x4', setCard('setup', SETUP_KEY, { volts }), circuit('C1', { rating })).length;
    // `16 A, 230 V` is of 16 A at 240 V as well, and neither of 20 A nor of 120 V.
    expect(found('C1 Curve x5', VOLTS, circuit('C1', { breaker: 'C16' })).length).toBe(1);
    expect(found('C1 Curve x5', VOLTS, circuit('C1', { breaker: 'B16' }))).toEqual([]);
    expect([rated(16, 230), rated(16, 240), rated(20, 230), rated(16, 120)]).toEqual([1, 1, 0, 0]);
    expect(found('C1 Panel x3', VOLTS, circuit('C1', { breaker: 'B16' }))).toEqual([]);
  });

  it('[SP11] units on a voltage that they are not made for, between two lines as well', () => {
    const between = circuit('C1', { supply: 'mains', phase: '1-2' });
    expect(found('C1 Lamp', VOLTS, mains({ phases: '3', volts: 230 }), between)).toContain(
      'caution unit-voltage: Circuit “C1” is at 398 V, for which by their manuals these are not made: 1',
    );
    // 208 V between two lines of 120 V are within a tenth of 220 V.
    expect(found('C1 Lamp', mains({ phases: '3', volts: 120 }), between, circuit('C1', { rating: 16 }))).toEqual([
      'note lines-unbalanced: The lines of “Mains” carry from 0 A to 1.11 A. Balance the supply',
    ]);
  });

  it('[SP12] a circuit that no card describes is a note once others are described', () => {
    expect(found('C1 Par\nc2 Par\nC2 Par\n- Par', VOLTS, circuit('C1', {}))).toEqual([
      'note circuit-undescribed: Circuit “C2” is not described, though others are: 1 and 1',
    ]);
    expect(found('C1 Par\nC2 Par', VOLTS)).toEqual([]);
  });
});

describe('findings of supplies', () => {
  const three = (...watts: readonly [number, number, number]) =>
    [
      watts
        .map((count, at) => (count === 0 ? '' : `C${at + 1} Par x${count}`))
        .filter((line) => line !== '')
        .join('\n'),
      watts.flatMap((_, at) => circuit(`C${at + 1}`, { supply: 'mains', phase: String(at + 1) })),
    ] as const;

  it('[SP3] a line over its rating is a blocker, [SP4] over its share a caution, [SP6] out of balance a note', () => {
    const [units, circuits] = three(4, 1, 1);
    expect(found(units, VOLTS, mains({ phases: '3', rating: 16 }), circuits)).toEqual([
      'blocker line-over-rating: Line 1 of “Mains” carries 17.39 A; it is made for 16 A. Balance the supply, or take load off it',
      'note lines-unbalanced: The lines of “Mains” carry from 4.35 A to 17.39 A. Balance the supply',
    ]);
    expect(found(units, SHARE, mains({ phases: '3', rating: 20 }), circuits)[0]).toBe(
      'caution line-over-share: Line 1 of “Mains” carries 17.39 A, more than the 80 % of 20 A that it may carry for hours by house rules',
    );
    const [even, of] = three(3, 3, 3);
    expect(found(even, VOLTS, mains({ phases: '3', rating: 16 }), of)).toEqual([]);
  });

  it('[SP5] the neutral of loads with a strong third harmonic is over the rating that its lines are within', () => {
    const [units, circuits] = three(3, 3, 3);
    // 13.04 A a line; 1.72 of that by the check value of 70 %: 22.4 A.
    expect(found(units, VOLTS, mains({ phases: '3', rating: 16, third: 0.7 }), circuits)).toEqual([
      'blocker neutral-over-rating: The neutral of “Mains” carries 22.44 A; a line is made for 16 A. Balance the supply, and ask an electrician',
    ]);
  });

  it('[SP16] says that nobody said the voltage, while a figure hangs on it', () => {
    expect(found('C1 Par', circuit('C1', {}))).toEqual([
      'caution volts-unsaid: Nobody said at which voltage the circuits are. They are reckoned at 230 V: say it on the page of the supply',
    ]);
    expect(found('C1 Par', mains({ phases: '1', volts: 120 }), circuit('C1', { supply: 'mains' }))).toEqual([]);
  });
});

describe('findings of positions', () => {
  it('[SP13] a position over its limit is a blocker, and names who stated the limit and when', () => {
    const stated = { kilograms: 20, person: 'Ona Reeve', on: '2026-11-25' };
    expect(found('- Par x4 @LX 1', limit({ ...stated, extra: 5 }))).toEqual([
      'blocker position-over-limit: “LX 1” holds 21 kg; Ona Reeve allows 20 kg, as of 2026-11-25. Take weight off, or ask a rigger',
    ]);
    expect(found('- Par x4 @lx  1', limit({ ...stated, extra: 4 }))).toEqual([]);
  });

  it('[SP14] units of unknown weight are named, [SP15] as is a limit that nobody answers for', () => {
    expect(found('- Ghost @LX 1', limit({ kilograms: 20 }))).toEqual([
      'caution position-weight-unknown: “LX 1” holds more than is reckoned: nobody knows the weight of LX 1 · 1',
      'caution limit-unsigned: Nobody is named who allows 20 kg at “LX 1”. Name the person responsible',
    ]);
  });
});
