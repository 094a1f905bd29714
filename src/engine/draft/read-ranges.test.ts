import { describe, expect, it } from 'vitest';
import { readRanges } from './read-ranges.ts';

const one = (text: string) => {
  const { lines, troubles } = readRanges(text);
  const [line] = lines;
  const wrong = troubles.find((each) => each.kind === 'unreadable-range' || each.kind === 'range-too-high');
  return line === undefined ? wrong?.kind : [line.from, line.to, line.name, line.attribute];
};

describe('readRanges', () => {
  it.each<[string, unknown]>([
    ['0-10 Closed', [0, 10, 'Closed', '']],
    ['11 - 127: Strobe, slow to fast [Shutter1Strobe]', [11, 127, 'Strobe, slow to fast', 'Shutter1Strobe']],
    ['128..255 Open', [128, 255, 'Open', '']],
    ['000–010\tClosed', [0, 10, 'Closed', '']],
    ['0 to 9 = Off', [0, 9, 'Off', '']],
    ['>127 On', [128, 255, 'On', '']],
    ['>= 127 On', [127, 255, 'On', '']],
    ['<10: Off', [0, 9, 'Off', '']],
    ['≤10 Off', [0, 10, 'Off', '']],
    ['5 One', [5, 5, 'One', '']],
    ['5', [5, 5, '', '']],
    ['0-10 - Closed', [0, 10, 'Closed', '']],
    ['0-10 2 turns', [0, 10, '2 turns', '']],
    ['0-10: % of it', [0, 10, '% of it', '']],
    ['0-10 a [b] []', [0, 10, 'a [b]', '']],
    ['0-10 [Pan]', [0, 10, '', 'Pan']],
    ['0-49% Half', [0, 127, 'Half', '']],
    ['50 % - 100 % Full', [128, 255, 'Full', '']],
    ['>50% Full', [131, 255, 'Full', '']],
    ['0-300 x', 'range-too-high'],
    ['>255 x', 'range-too-high'],
    ['10-5 x', 'unreadable-range'],
    ['0-10Closed', 'unreadable-range'],
    ['Closed', 'unreadable-range'],
    ['0-1.5 x', 'unreadable-range'],
    ['<0 x', 'unreadable-range'],
  ])('[DR7] %s', (text, wanted) => {
    expect(one(text)).toEqual(wanted);
  });

  it('[DR7] gaps and overlaps, in whatever order the lines come', () => {
    const { lines, troubles } = readRanges('20-100 b\n\n0-9 a\n90-255 c\n90-91 d');
    expect(lines.map((line) => [line.line, line.from, line.name])).toEqual([
      [3, 0, 'a'],
      [1, 20, 'b'],
      [4, 90, 'c'],
    ]);
    expect(troubles).toEqual([
      { kind: 'ranges-gap', from: 10, to: 19 },
      { kind: 'ranges-overlap', from: 90, to: 100 },
      { kind: 'ranges-overlap', from: 90, to: 91 },
    ]);
    expect(readRanges('').troubles).toEqual([]);
  });

  it('[DR7] the longest and worst of lines is read in one go', () => {
    const worst = [`5${' '.repeat(19_990)}- 5x`, `5${'.'.repeat(19_990)}5x`, `0-10 ${'['.repeat(19_990)}`];
    for (const text of worst) expect(readRanges(text).lines.length).toBeLessThan(2);
  });
});
