import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { hostileText } from '#tests/support/hostile-text.ts';
import { formatCopied, parsePasted } from './clipboard.ts';

describe('clipboard', () => {
  it('reads back every grid it formats', () => {
    const rng = seededRng(31);
    for (let round = 0; round < 3000; round++) {
      const width = 1 + rng.int(5);
      const grid = Array.from({ length: 1 + rng.int(5) }, () =>
        Array.from({ length: width }, () => (rng.int(3) === 0 ? '' : hostileText(rng))),
      );
      expect(parsePasted(formatCopied(grid)).cells).toEqual(grid);
    }
  });

  it.each([
    [
      'a\tb\r\nc\td\r\n',
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
    ],
    [
      'a\tb\nc',
      [
        ['a', 'b'],
        ['c', ''],
      ],
    ],
    ['"two\nlines"\t5" fresnel', [['two\nlines', '5" fresnel']]],
    ['"said ""go"""\t1', [['said "go"', '1']]],
    [
      '"open\tx\ny\tz',
      [
        ['"open', 'x'],
        ['y', 'z'],
      ],
    ],
    ['1', [['1']]],
    ['', []],
  ])('reads %j', (text, cells) => {
    expect(parsePasted(text).cells).toEqual(cells);
  });
});
