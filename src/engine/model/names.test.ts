import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { fixtureId, foldName, modeId, positionId } from './ids.ts';
import { compareNatural } from './natural-order.ts';

describe('names', () => {
  it('[AD4] are compared without regard to case, white space and the way an accent is written', () => {
    expect(foldName('  LX\t1 ')).toBe('lx 1');
    expect(foldName('Bru\u0308cke')).toBe(foldName('BRÜCKE'));
    expect(modeId('Spot  A', 'Full 16')).toBe(modeId('spot a', 'FULL 16 '));
    expect(positionId('Box boom left')).toBe(positionId('box Boom  LEFT'));
    expect(modeId('a', 'b c')).not.toBe(modeId('a b', 'c'));
  });

  it('[AD4] fold the same way however many were folded before', () => {
    const before = foldName('Zug 1');
    for (let n = 0; n < 10_000; n++) foldName(`Name ${n}`);
    for (let n = 0; n < 10_000; n++) modeId(`Type ${n}`, `Mode ${n}`);
    expect(foldName('Zug 1')).toBe(before);
    expect(modeId('Type 5', 'Mode 5')).toBe(`type 5\u001fmode 5`);
  });

  it.each(['', 'a/b', 'a\nb', 'x'.repeat(65)])('an id is not %j', (text) => {
    expect(() => fixtureId(text)).toThrow('not a fixture id');
  });
});

describe('natural order', () => {
  const units = [
    '',
    '2',
    '4',
    '4A',
    '4a',
    '04',
    '10',
    '10b',
    'L9',
    'L10',
    'l9',
    'B',
    'a',
    'Ä',
    '4.5',
    '999999999999999999999',
  ];

  it('[AD3] sorts units as people count them', () => {
    const sorted = ['10', '4A', 'L10', '2', 'L9', '4', '3b', '3'].sort(compareNatural);
    expect(sorted).toEqual(['2', '3', '3b', '4', '4A', '10', 'L9', 'L10']);
  });

  it('[AD3] is a total order: equal only for equal text, turned round when asked the other way, transitive', () => {
    const rng = seededRng(2);
    for (const a of units)
      for (const b of units) {
        expect(Math.sign(compareNatural(a, b)), `${a} ${b}`).toBe(-Math.sign(compareNatural(b, a)) + 0);
        expect(compareNatural(a, b) === 0, `${a} ${b}`).toBe(a === b);
      }
    for (let n = 0; n < 5000; n++) {
      const [a, b, c] = [rng.pick(units), rng.pick(units), rng.pick(units)].sort(compareNatural) as [
        string,
        string,
        string,
      ];
      expect(
        compareNatural(a, b) <= 0 && compareNatural(b, c) <= 0 && compareNatural(a, c) <= 0,
        `${a} ${b} ${c}`,
      ).toBe(true);
    }
  });
});
