import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { contrast } from './contrast.ts';

const AA_TEXT = 4.5; // WCAG 2.1, success criterion 1.4.3
const AA_EDGE = 3; // WCAG 2.1, success criterion 1.4.11

const css = readFileSync(new URL('./theme.css', import.meta.url), 'utf8');
const tokens = new Map(
  [...css.matchAll(/--color-([\w-]+): light-dark\((#\w+), (#\w+)\)/g)].map(([, name, day, dark]) => [
    name as string,
    { day: day as string, dark: dark as string },
  ]),
);

const numbered = (name: string, count: number) => Array.from({ length: count }, (_, i) => `${name}-${i + 1}`);

/** Every pair of text on a ground that a screen may show. */
const TEXT: readonly (readonly [text: string, ground: string])[] = [
  ...['paper', 'sheet', 'selected', 'hover'].flatMap((ground) =>
    ['ink', 'soft', 'blocker', 'caution', 'note', 'good'].map((text) => [text, ground] as const),
  ),
  ['sheet', 'ink'],
  ['sheet', 'blocker'],
  ...numbered('block', 6).map((ground) => ['block-ink', ground] as const),
  ...numbered('person', 8).map((ground) => ['person-ink', ground] as const),
];

const EDGES: readonly (readonly [string, string])[] = [
  ['edge', 'paper'],
  ['edge', 'sheet'],
  ...numbered('person', 8).map((name) => [name, 'sheet'] as const),
];

function measured(theme: 'day' | 'dark', a: string, b: string): number {
  const [first, second] = [tokens.get(a), tokens.get(b)];
  if (!first || !second) throw new Error(`no such pair of tokens: ${a}, ${b}`);
  return contrast(first[theme], second[theme]);
}

// WCAG 2.1: black on white is 21:1, and a colour on itself 1:1. #767676 on white: from memory, the lightest grey that passes AA.
test('measures as the standard says', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#a8321f', '#a8321f')).toBe(1);
  expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(AA_TEXT);
  expect(contrast('#777777', '#ffffff')).toBeLessThan(AA_TEXT);
});

test('refuses what is not an opaque colour', () => {
  expect(() => contrast('#fff', '#000000')).toThrow('#fff');
});

for (const theme of ['day', 'dark'] as const) {
  test.each(TEXT)(`${theme}: %s on %s can be read`, (text, ground) => {
    expect(measured(theme, text, ground)).toBeGreaterThanOrEqual(AA_TEXT);
  });
  test.each(EDGES)(`${theme}: %s against %s can be seen`, (edge, ground) => {
    expect(measured(theme, edge, ground)).toBeGreaterThanOrEqual(AA_EDGE);
  });
}
