import { describe, expect, it } from 'vitest';
import { countNames, countOn } from './counting.ts';

describe('counting', () => {
  it.each([
    ['21-26', '21 22 23 24 25 26'],
    ['21 – 23', '21 22 23'],
    ['1 to 3', '1 2 3'],
    ['1 bis 3', '1 2 3'],
    ['1..3', '1 2 3'],
    ['A1-A3', 'A1 A2 A3'],
    ['A1-3', 'A1 A2 A3'],
    ['1+3+5', '1 3 5'],
    ['1, 3, 5', '1 3 5'],
    ['1-3, 7', '1 2 3 7'],
    ['4A', '4A'],
    ['', ''],
    ['3-1', '3-1'],
    ['A1-B3', 'A1-B3'],
    ['left, right', 'left, right'],
  ])('%j counts %s', (text, names) => {
    expect(countNames(text)?.join(' ')).toBe(names);
  });

  it('counts no more than a line may stand for', () => {
    expect(countNames('1-1000')?.length).toBe(1000);
    expect(countNames('1-1001')).toBeUndefined();
    expect(countNames('1-900, 1001-1900')).toBeUndefined();
  });

  it.each([
    ['4', 2, '6'],
    ['A09', 1, 'A10'],
    ['4A', 1, undefined],
    ['', 1, undefined],
  ])('%j and %i more is %j', (name, steps, next) => {
    expect(countOn(name, steps)).toBe(next);
  });
});
