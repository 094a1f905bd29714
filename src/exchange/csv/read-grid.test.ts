import { describe, expect, it } from 'vitest';
import { LIST_LIMITS } from './limits.ts';
import { readGrid } from './read-grid.ts';

function gridOf(text: string) {
  const grid = readGrid(text);
  if (!grid.ok) throw new Error(JSON.stringify(grid.error));
  return grid.value;
}

describe('readGrid', () => {
  // RFC 4180, section 2, points 1, 2, 5, 6 and 7, in its own examples.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('reads the example of RFC 4180 %j', (text, cells) => {
    expect(gridOf(text).rows.map((row) => row.cells)).toEqual(cells);
  });

  it.each([
    [';', 'Nr;Leistung\n1;0,62\n2;0,62\n'],
    [',', 'Unit,Notes\n1,a;b\n2,"c;d"\n'],
    ['\t', 'Unit\tNotes\n1\ta, b, c\n2\td, e, f\n'],
    ['|', 'Unit|Address\n1|2:101\n2|2:117\n'],
    [';', 'sep=;\n1,5;2\n'],
    [';', 'Hall, winter, version 2;;\n\nUnit;Type;Address\n1;Spot;3.001\n'],
    [',', '1:1\n1:2\n'],
  ])('takes %j for the delimiter', (delimiter, text) => {
    expect(gridOf(text).delimiter).toBe(delimiter);
  });

  it('knows on which line of the source each row begins, whatever ends the lines', () => {
    const grid = gridOf('a,b\r\n"two\nlines",c\n\rd,"x\r\ny\rz"\re,f');
    expect(grid.rows.map((row) => [row.line, ...row.cells])).toEqual([
      [1, 'a', 'b'],
      [2, 'two\nlines', 'c'],
      [4],
      [5, 'd', 'x\r\ny\rz'],
      [8, 'e', 'f'],
    ]);
  });

  it.each([
    [
      'a,"open\nb,c\n',
      [
        ['a', '"open'],
        ['b', 'c'],
      ],
      [{ code: 'quote-not-closed', line: 1, column: 1 }],
    ],
    [
      'a,"open\nb,"closed"\nc,"too"\n',
      [
        ['a', '"open'],
        ['b', 'closed'],
        ['c', 'too'],
      ],
      [{ code: 'quote-not-closed', line: 1, column: 1 }],
    ],
    [
      'a,"5" gel"\nb,c\n',
      [
        ['a', '5" gel'],
        ['b', 'c'],
      ],
      [{ code: 'stray-quote', line: 1, column: 1 }],
    ],
    [
      'a,5" gel\nb,c\n',
      [
        ['a', '5" gel'],
        ['b', 'c'],
      ],
      [],
    ],
    [
      'a, "b, c"\nd,e\n',
      [
        ['a', 'b, c'],
        ['d', 'e'],
      ],
      [],
    ],
  ])('reads odd quotes in %j without losing a line', (text, cells, cautions) => {
    const grid = gridOf(text);
    expect(grid.rows.map((row) => row.cells)).toEqual(cells);
    expect(grid.cautions).toEqual(cautions);
  });

  it('refuses what is too long or too wide, and says where', () => {
    expect(readGrid('a,b\n'.repeat(LIST_LIMITS.rows + 1))).toEqual({
      ok: false,
      error: { code: 'too-many-lines', limit: LIST_LIMITS.rows },
    });
    expect(readGrid(`a,b\n${'x,'.repeat(LIST_LIMITS.columns)}x\n`)).toEqual({
      ok: false,
      error: { code: 'too-many-columns', line: 2, limit: LIST_LIMITS.columns },
    });
    expect(readGrid('\n\n')).toEqual({ ok: false, error: { code: 'no-text' } });
    expect(gridOf(`a,b${','.repeat(300)}\n`).width).toBe(2);
  });
});
