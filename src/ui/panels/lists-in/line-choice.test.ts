import { expect, test } from 'vitest';
import type { FixtureList, ListLine } from '#engine/list/read-list.ts';
import { countTaken, shownLines } from './line-choice.ts';

/** `3 Bar 1/Spot x2 !`: source line 3, two fixtures of type Spot on Bar 1, with a remark. `4 ?` was not read, `5 -` is blank. */
function line(text: string): ListLine {
  const [, number = '', rest = ''] = /^(\d+) (.*)$/.exec(text) ?? [];
  const base = {
    line: Number(number),
    text: rest,
    remarks: rest.endsWith('!') ? [{ code: 'unreadable' as const, column: 0, text: '' }] : [],
  };
  if (rest === '?') return { ...base, kind: 'unread', reason: 'no-fixture' };
  const [, position, type, count] = /^([^/]*)\/(\w*) x(\d+)/.exec(rest) ?? [];
  if (position === undefined || type === undefined) return { ...base, kind: 'blank' };
  return { ...base, kind: 'fixtures', fixtures: Array.from({ length: Number(count) }, () => ({ position, type })) };
}

function list(...texts: readonly string[]): FixtureList {
  const lines = texts.map(line);
  const columns = [
    { heading: 'Type', meaning: 'type' as const, filled: 3, taken: 3 },
    { heading: 'kW', meaning: 'ignore' as const, filled: 3, taken: 0 },
    { heading: '', meaning: 'ignore' as const, filled: 0, taken: 0 },
  ];
  return { lines, positions: [], modes: [], universes: [], notes: [], wanted: [], cards: [], columns, fixtures: 0 };
}

const LIST = list('1 Bar 1/Spot x2 !', '2 -', '3 bar  1/Wash x1', '4 ?', '5 /Spot x3');

test('counts what comes in, names by their folded form and empty ones not at all, and columns left out that hold something', () => {
  expect(countTaken(LIST, new Set())).toEqual({
    fixtures: 6,
    positions: 1,
    types: 2,
    unread: 1,
    leftOut: 0,
    toCheck: 1,
    columnsOut: 1,
  });
});

test('does not count lines left out, nor numbers that are no line of fixtures', () => {
  expect(countTaken(LIST, new Set([1, 3, 4, 99]))).toEqual({
    fixtures: 3,
    positions: 0,
    types: 1,
    unread: 1,
    leftOut: 2,
    toCheck: 0,
    columnsOut: 1,
  });
});

test('shows all lines, those that want a look, or those not read', () => {
  const numbers = (show: Parameters<typeof shownLines>[1]) => shownLines(LIST, show).map((each) => each.line);
  expect(numbers('all')).toEqual([1, 2, 3, 4, 5]);
  expect(numbers('check')).toEqual([1, 4]);
  expect(numbers('unread')).toEqual([4]);
});
