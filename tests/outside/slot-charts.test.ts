import { describe, expect, it } from 'vitest';
import type { ChartMode, ChartReading } from '#engine/draft/chart-reading.ts';
import { readChart } from '#exchange/chart/read-chart.ts';
import { SLOT_CHARTS } from './slot-charts.ts';

describe('charts as manuals print them', () => {
  it.each(SLOT_CHARTS)('$habit', ({ text, modes, leftOut = [], remarks = [] }) => {
    const read = readChart(text);
    if (!read.ok) throw new Error(`The chart was refused: ${read.error.code}`);
    const said = Object.fromEntries(read.value.modes.map((mode) => [mode.name, rowsOf(mode)]));
    expect({ modes: said, leftOut: leftOutOf(read.value), remarks: remarksOf(read.value) }).toEqual({
      modes,
      leftOut,
      remarks,
    });
    expect(read.value.modes).toHaveLength(Object.keys(modes).length);
  });
});

const rowsOf = ({ rows, repeats }: ChartMode): readonly string[] => [
  ...rows.map((row) => {
    const part = row.part === '' ? '' : ` {${row.part}}`;
    const value = row.default === '' ? '' : ` ${row.default}`;
    const ranges = row.ranges === '' ? '' : ` | ${row.ranges.replaceAll('\n', ' / ')}`;
    return `${row.break === '' ? '' : `${row.break}:`}${row.slots} ${row.name} = ${row.attribute} ${row.guess}${part}${value}${ranges}`;
  }),
  ...repeats.map(
    ({ rows: each, firstRow, count, step }) =>
      `repeats: ${each} rows from row ${firstRow + 1}, ${count} times, step ${step}`,
  ),
];

const leftOutOf = ({ lines }: ChartReading) =>
  lines.flatMap(({ line, became }) => (became.kind === 'left-out' ? [`${line} ${became.reason}`] : []));

const remarksOf = ({ modes }: ChartReading) =>
  modes.flatMap((mode) => mode.remarks.map(({ code, text }) => `${code} ${text}`.trim()));
