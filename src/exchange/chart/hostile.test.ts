import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import type { ChartReading } from '#engine/draft/chart-reading.ts';
import { readRanges } from '#engine/draft/read-ranges.ts';
import { readValue } from '#engine/draft/read-value.ts';
import { readSlots } from '#engine/draft/slots-text.ts';
import { CHART_LIMITS } from './limits.ts';
import { readChart } from './read-chart.ts';

const PIECES = [
  ...[
    '1',
    '2',
    '5',
    '0',
    '255',
    '0-10',
    '11-255',
    '000 – 127',
    '1/2',
    '1+2',
    '3,4',
    '5-7',
    '0 to 9',
    '50 %',
    '0-50%',
    '16 bit',
    '512',
    '513',
  ],
  ...[
    'CH',
    'CH1:',
    'Channel 2',
    'Slot',
    '#',
    '.',
    ':',
    '-',
    '–',
    '…',
    '..',
    '=',
    '(',
    ')',
    '[',
    ']',
    '%',
    '°',
    '→',
    '"',
    "'",
  ],
  ...[
    'Pan',
    'Pan fine',
    'fine',
    'Tilt LSB',
    'RGB',
    'RGB pixel 1-8',
    'Reserved',
    'Dimmer',
    'Strobe',
    'Gobo 2',
    'Grün',
    'as in mode A',
  ],
  ...[
    'Channel;Function;Value',
    'Basic',
    'Extended',
    '8 CH mode',
    '20-channel mode',
    'Mode',
    'Page 3',
    '3 / 12',
    'Default',
    'Description',
  ],
  ...[
    '\t',
    ';',
    '|',
    ',',
    '  ',
    '      ',
    ' ',
    '\n',
    '\n',
    '\n',
    '\r\n',
    '\r',
    '\u00a0',
    '\u00ad',
    '\ufeff',
    '\u2028',
    '\0',
    '中文',
    '🎭',
    '\ud800',
  ],
];

describe('any text at all', () => {
  it('is read without a throw, every line accounted for once, every row as a draft holds it', () => {
    const rng = seededRng(77);
    let rows = 0;
    for (let round = 0; round < 600; round++) {
      const text = Array.from(
        { length: rng.int(rng.pick([6, 40, 160])) },
        () => rng.pick(PIECES) + rng.pick(['', ' ', '\n']),
      ).join('');
      const read = readChart(text);
      if (!read.ok) expect({ text, code: read.error.code }).toEqual({ text, code: 'no-text' });
      else {
        checkAccount(text, read.value);
        checkTexts(text, read.value);
        rows += read.value.modes.reduce((sum, mode) => sum + mode.rows.length, 0);
      }
    }
    expect(rows).toBeGreaterThan(800);
  });

  it('above the caps is refused with a code', () => {
    const refusal = (text: string) => {
      const read = readChart(text);
      return read.ok ? 'read' : read.error.code;
    };
    expect(refusal('x'.repeat(CHART_LIMITS.characters + 1))).toBe('too-large');
    expect(refusal('\n'.repeat(CHART_LIMITS.lines))).toBe('too-many-lines');
    expect(refusal(' \u00a0\n\ufeff')).toBe('no-text');
    expect(refusal(`1 Dimmer${'\n'.repeat(CHART_LIMITS.lines - 1)}`)).toBe('read');
  });
});

/** Each line once and in order; a row's lines know their row, and a line's rows their line. */
function checkAccount(text: string, { modes, lines }: ChartReading): void {
  expect(lines.map((line) => line.text)).toEqual(text.split(/\r\n|\r|\n/));
  expect(lines.every((line, at) => line.line === at + 1)).toBe(true);
  const claimed = new Set<string>();
  for (const { line, became } of lines) {
    if (!('of' in became)) continue;
    expect(became.of.length).toBeGreaterThan(0);
    for (const { mode, row } of became.of) {
      expect(modes[mode]?.rows[row]).toBeDefined();
      claimed.add(`${mode}/${row}/${line}`);
    }
  }
  const rowLines = modes.flatMap((mode, at) =>
    mode.rows.flatMap((row, index) => row.lines.map((line) => `${at}/${index}/${line}`)),
  );
  expect({ text, missing: rowLines.filter((each) => !claimed.has(each)) }).toEqual({ text, missing: [] });
  for (const { rows, repeats } of modes) {
    for (const { firstRow, rows: each, count } of repeats)
      expect(firstRow + each * count).toBeLessThanOrEqual(rows.length);
  }
}

function checkTexts(text: string, { modes }: ChartReading): void {
  for (const row of modes.flatMap((mode) => mode.rows)) {
    const slots = readSlots(row.slots) ?? [];
    const unreadable = readRanges(row.ranges).troubles.filter((trouble) => 'line' in trouble);
    expect({ text, row, slots: slots.length > 0, unreadable }).toEqual({ text, row, slots: true, unreadable: [] });
    const value = readValue(row.default, 4);
    expect(value === null || typeof value === 'number').toBe(true);
  }
}

// Each fills the caps with what costs a careless reader more than its length: the test's own time limit is the bound.
const HOSTILE: Readonly<Record<string, (rng: Rng) => string>> = {
  'one line': () => 'a '.repeat(500_000),
  'long runs of one mark': () => lines(500, `${'-'.repeat(900)}x`),
  'spaces within lines': () => lines(900, `1${' '.repeat(900)}x`),
  'marks behind a name': () => lines(900, `1 Pan fine ${'-'.repeat(900)}x`),
  'spaces before a comma': () => lines(900, `${' '.repeat(900)}1 Pan, fine`),
  'brackets that never close': () => lines(900, `1 ${'('.repeat(900)}`),
  'quotes that never close': () => lines(19_000, '1;"Pan;0-255;"'),
  'headings over headings': () => lines(9_000, 'Channel;Function;Value;Description;a;b;c;d;e;f;g;h;i;j;k;l'),
  'aligned headings': () => lines(9_000, 'Channel  Function  Value  Description  a  b  c  d  e  f  g  h  i'),
  'cells without end': () => `${';'.repeat(400_000)}"${'\n'.repeat(15_000)}"${';'.repeat(400_000)}`,
  'single values counted up': () => Array.from({ length: 19_000 }, (_, at) => `${at % 256} Value`).join('\n'),
  'pixels without end': () => lines(19_000, '1-510 RGB pixel 1-170'),
  'rows taken apart with values': () => lines(20, `1-512 Reserved\n${lines(900, '0-10 x')}`),
  'values without end': () => `1 Pan\n${lines(19_000, '0-10 x')}`,
  'words that go on': () => `1 Pan\n${lines(19_000, '   and so on')}`,
  'rows alike': () => Array.from({ length: 19_000 }, (_, at) => `${(at % 512) + 1} Red`).join('\n'),
  'numbers and dashes': () => lines(1_000, '1-2-3/4+5,6&7…8..9 to 10 '.repeat(38)),
  'modes side by side': () => `${'Mode 1;'.repeat(15)}Function;Value\n${lines(15_000, `${'1;'.repeat(15)}Pan;0-9`)}`,
};

const lines = (count: number, line: string) => Array.from({ length: count }, () => line).join('\n');

describe('a text made to keep the reader busy', () => {
  for (const [what, write] of Object.entries(HOSTILE)) {
    it(`is read to its end: ${what}`, () => {
      const text = write(seededRng(5));
      expect(text.length).toBeLessThanOrEqual(CHART_LIMITS.characters);
      const read = readChart(text);
      expect(read.ok && read.value.lines.length).toBe(text.split('\n').length);
    });
  }
});
