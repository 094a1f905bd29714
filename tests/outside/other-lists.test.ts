import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decodeText } from '#exchange/csv/decode-text.ts';
import { importBytes, printList, readFixtureFile } from '#tests/support/import-bytes.ts';

const folder = new URL('../fixtures/lists/', import.meta.url);
const lists = readdirSync(folder).filter((name) => /\.(csv|txt)$/.test(name) && !/expected|^ropewalk/.test(name));

// Lists of our own invention with the faults and habits of real ones, and beside each what it must become, line by line,
// printed by the reader once and then read through line by line against the list.
describe('lists with other habits', () => {
  it.each(lists)('%s becomes what it says, line by line', (name) => {
    const expected = readFileSync(new URL(`${name.replace(/\.\w+$/, '')}.expected.txt`, folder), 'utf8');
    expect(`${printList(importBytes(readFixtureFile(name))).join('\n')}\n`).toBe(expected);
  });

  it.each([
    ['theatre-du-quai.csv', 'windows-1252', ';'],
    ['teatro-ponte.txt', 'utf-16-le', '\t'],
    ['sala-norte.txt', 'utf-16-be', '\t'],
    ['sala-sur.csv', 'utf-8', ';'],
    ['haus-west.csv', 'windows-1252', ';'],
    ['tables.txt', 'utf-8', '|'],
    ['no-headings.csv', 'utf-8', ','],
    ['cut-off.csv', 'utf-8', ','],
  ])('%s is taken for %s with %j', (name, encoding, delimiter) => {
    const bytes = readFixtureFile(name);
    expect(decodeText(bytes)).toMatchObject({ ok: true, value: { encoding } });
    expect(importBytes(bytes).grid.delimiter).toBe(delimiter);
  });

  it('says where a quote is not closed and that the end is cut off', () => {
    const bytes = readFixtureFile('cut-off.csv');
    expect(decodeText(bytes)).toMatchObject({ ok: true, value: { cautions: ['cut-off'] } });
    expect(importBytes(bytes).grid.cautions).toEqual([{ code: 'quote-not-closed', line: 3, column: 6 }]);
  });

  it('counts the cells of columns that are not taken in', () => {
    const { list } = importBytes(readFixtureFile('blank-columns.csv'));
    expect(list.columns.filter((column) => column.filled !== column.taken)).toEqual([
      { heading: 'Power (W)', meaning: 'ignore', filled: 3, taken: 0 },
    ]);
  });
});
