import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { readChart } from './read-chart.ts';

/** A channel as the test knows it, before anybody wrote it down. */
interface Written {
  readonly slots: readonly number[];
  readonly name: string;
  readonly ranges: readonly { readonly from: number; readonly to: number; readonly name: string }[];
}

const NAMES = ['Pan', 'Tilt', 'Dimmer', 'Shutter', 'Red', 'Green', 'Blue', 'White', 'Colour wheel', 'Gobo 1', 'Gobo 2'];
const MORE = [
  'Prism rotation',
  'Zoom',
  'Focus',
  'Iris',
  'Frost',
  'Macro',
  'Programs',
  'Pan/Tilt speed',
  'Reserved',
  'Fan',
];
const STATES = ['Closed', 'Open', 'Slow to fast', 'No function', 'Red', 'Split, half', 'Index 0 to 90°', 'Scroll →'];

describe('charts written in any habit', () => {
  it('read back as the same slots, names and values', () => {
    const rng = seededRng(411);
    for (let round = 0; round < 250; round++) {
      const rows = randomRows(rng);
      const { text, habit } = writeChart(rng, rows);
      const read = readChart(text);
      const modes = read.ok ? read.value.modes : [];
      const back = modes.flatMap((mode) => mode.rows.map(({ slots, name, ranges }) => ({ slots, name, ranges })));
      expect({ round, habit, text, modes: modes.length, back }).toEqual({
        round,
        habit,
        text,
        modes: 1,
        back: rows.map(asRead),
      });
    }
  });
});

const asRead = ({ slots, name, ranges }: Written) => ({
  slots: slots.length === 1 || slots[1] === (slots[0] ?? 0) + 1 ? slots.join('-') : slots.join(', '),
  name,
  ranges: ranges
    .map((range) => `${range.from === range.to ? range.from : `${range.from}-${range.to}`} ${range.name}`)
    .join('\n'),
});

/** Some channels, a few of 16 bit, whose fine slot may stand far behind. */
function randomRows(rng: Rng): readonly Written[] {
  const pool = [...NAMES, ...MORE].sort(() => rng.next() - 0.5).slice(0, 2 + rng.int(12));
  const rows: Written[] = [];
  const later: { readonly at: number }[] = [];
  let slot = 1;
  for (const name of pool) {
    const wide = rng.int(4) === 0 && !/\d|Reserved|speed/.test(name);
    const adjacent = rng.int(3) > 0;
    const ranges = rng.int(2) === 0 ? [] : randomRanges(rng);
    rows.push({ slots: wide && adjacent ? [slot, slot + 1] : [slot], name, ranges });
    if (wide && !adjacent) later.push({ at: rows.length - 1 });
    slot += wide && adjacent ? 2 : 1;
  }
  for (const { at } of later) {
    const row = rows[at];
    if (row !== undefined) rows[at] = { ...row, slots: [...row.slots, slot] };
    slot += 1;
  }
  return rows;
}

/** All 256 values, cut up. */
function randomRanges(rng: Rng): Written['ranges'] {
  const ranges = [];
  for (let from = 0; from <= 255; ) {
    const to = Math.min(255, from + (rng.int(6) === 0 ? 0 : 4 + rng.int(120)));
    ranges.push({ from, to, name: rng.pick(STATES) });
    from = to + 1;
  }
  return ranges;
}

interface Line {
  /** Empty where the row above goes on. */
  readonly slots: string;
  readonly name: string;
  readonly value: string;
  readonly text: string;
}

function linesOf(rng: Rng, rows: readonly Written[], slotsOf: (slots: readonly number[]) => string): readonly Line[] {
  const dash = rng.pick(['-', ' - ', '–', ' – ', '..', '…', ' to ']);
  const pad = rng.int(2) * 3;
  const fine = rng.pick(['fine', '(fine)', 'LSB', '16 bit']);
  const number = (value: number) => String(value).padStart(pad, '0');
  const value = ({ from, to }: { readonly from: number; readonly to: number }) =>
    from === to ? number(from) : `${number(from)}${dash}${number(to)}`;
  const lines = rows.flatMap((row): readonly (Line & { readonly at: number })[] => {
    const together = row.slots.length === 2 && row.slots[1] === (row.slots[0] ?? 0) + 1 && rng.int(2) === 0;
    const [first = 0, second] = row.slots;
    const [head, ...tail] = row.ranges;
    const own = {
      at: first,
      slots: slotsOf(together ? row.slots : [first]),
      name: together ? `${row.name} 16 bit` : row.name,
    };
    const lead = { ...own, value: head === undefined ? '' : value(head), text: head?.name ?? '' };
    const rest = tail.map((range) => ({ at: first, slots: '', name: '', value: value(range), text: range.name }));
    const other =
      second === undefined || together
        ? []
        : [{ at: second, slots: slotsOf([second]), name: `${row.name} ${fine}`, value: '', text: '' }];
    return [lead, ...rest, ...other];
  });
  return [...lines].sort((a, b) => a.at - b.at);
}

const HEADINGS = [
  ['Channel', 'Function', 'Value', 'Description'],
  ['Kanal', 'Funktion', 'DMX-Wert', 'Beschreibung'],
  ['Canal', 'Fonction', 'Valeur', 'Effet'],
  ['DMX channel', 'Parameter', 'Range', 'Remarks'],
] as const;

const HABITS = {
  delimited: (rng: Rng, rows: readonly Written[]) => {
    const delimiter = rng.pick(['\t', ';', '|', ',']);
    const together = rng.pick(['/', '+', '-']);
    const cell = (text: string) => (text.includes(delimiter) ? `"${text}"` : text);
    const lines = linesOf(rng, rows, (slots) => slots.join(together));
    const cells = lines.map((line) => [line.slots, line.name, line.value, line.text]);
    const framed = delimiter === '|' && rng.int(2) === 0;
    const all = [rng.pick(HEADINGS), ...cells].map((row) => row.map(cell).join(delimiter));
    return all.map((line) => (framed ? `| ${line} |` : line));
  },
  aligned: (rng: Rng, rows: readonly Written[]) => {
    const lines = linesOf(rng, rows, (slots) => slots.join(rng.pick(['/', '+'])));
    const cells = [rng.pick(HEADINGS), ...lines.map((line) => [line.slots, line.name, line.value, line.text])];
    return cells.map(([slots = '', name = '', value = '', text = '']) =>
      `${slots.padEnd(14)}${name.padEnd(24)}${value.padEnd(14)}${text}`.trimEnd(),
    );
  },
  listed: (rng: Rng, rows: readonly Written[]) => {
    const before = rng.pick(['', 'CH', 'Ch. ', 'Channel ', 'Slot ', 'Kanal ']);
    const behind = rng.pick(before === '' ? [' ', '. ', ': ', ') '] : [' ', ': ', ' - ']);
    const indent = ' '.repeat(rng.pick([0, 2, 4]));
    const lines = linesOf(rng, rows, (slots) => slots.join('/'));
    return lines.flatMap((line) => {
      const values = line.value === '' ? [] : [`${indent}${line.value} ${line.text}`];
      return line.slots === '' ? values : [`${before}${line.slots}${behind}${line.name}`, ...values];
    });
  },
} as const;

function writeChart(rng: Rng, rows: readonly Written[]): { readonly text: string; readonly habit: string } {
  const habit = rng.pick(Object.keys(HABITS) as (keyof typeof HABITS)[]);
  let page = 11 + rng.int(30);
  const lines = HABITS[habit](rng, rows).flatMap((line, at) =>
    at > 0 && rng.int(12) === 0 ? ['', `Wexcombe Beam Two, user manual, page ${page++}`, '', line] : [line],
  );
  const blank = rng.int(4) === 0 ? ['DMX chart of the Wexcombe Beam Two', ''] : [];
  const text = [...blank, ...lines].join(rng.pick(['\n', '\r\n']));
  const spaced = rng.int(4) === 0 ? text.replaceAll(' ', '\u00a0') : text;
  const soft = rng.int(4) === 0 ? spaced.replaceAll('ee', 'e\u00ade') : spaced;
  return { text: rng.int(4) === 0 ? `\ufeff${soft}` : soft, habit };
}
