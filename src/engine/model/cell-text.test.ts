import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { absolute } from './address.ts';
import { formatCell, isNumberField, parseCellText } from './cell-text.ts';
import { type CellValue, FIELDS, type Field } from './field.ts';
import { fixtureId } from './ids.ts';
import { cellOf, readFixture } from './read-fixture.ts';

const TEXTS = [
  '12',
  '012',
  ' 12 ',
  '1.5',
  '1.5e+0',
  '2:101',
  '2/101',
  '2.613',
  '0',
  '-3',
  '1e+21',
  'abc',
  "'",
  "''",
  "'12",
  ' ',
  '\t',
  'Infinity',
  'NaN',
  '-0',
  '=1+1',
  'Bridge 1 ',
  'é',
  '99999999999999999999',
  '63999:512',
  '64000:1',
  'a\nb',
  '0x10',
];
const NUMBERS = [0, 1, 12, 613, 1.5, 2.25, -3, -1.5, 1e21, 1e-7, 999_999, 1_000_000, 32_767_488, 32_767_489, 5e-324];

describe('cell text', () => {
  it('reads back what it prints, for every value a cell of a fixture can hold', () => {
    const rng = seededRng(11);
    const values: CellValue[] = [null, ...TEXTS, ...NUMBERS];
    for (let i = 0; i < 3000; i++)
      values.push(rng.pick(TEXTS) + rng.pick(TEXTS), rng.int(40_000_000) - 100, rng.next());
    for (const field of FIELDS) {
      for (const value of values) {
        const held = cellOf(readFixture(fixtureId('f1'), { [field]: value }), field);
        expect({ field, value: parseCellText(field, formatCell(field, held)) }).toEqual({ field, value: held });
      }
    }
  });

  it('never changes what a person typed into a text field', () => {
    for (const field of FIELDS.filter((each) => !isNumberField(each))) {
      for (const text of TEXTS) expect(parseCellText(field, text)).toBe(text);
    }
  });

  const rows: [Field, string, CellValue][] = [
    ['channel', '12', 12],
    ['channel', ' 012 ', 12],
    ['channel', '12a', '12a'],
    ['channel', '   ', null],
    ['channel', "'12", '12'],
    ['address', '2/101', absolute(2, 101)],
    ['address', '2.101', absolute(2, 101)],
    ['address', '2:101', absolute(2, 101)],
    ['address', '613', absolute(2, 101)],
    ['address4', '1:512', 512],
    ['address', '2:513', '2:513'],
    ['address', '0', 0],
    ['order', '1.5', 1.5],
    ['unit', '12', '12'],
    ['position', '', null],
  ];
  it.each(rows)('%s %j means %j', (field, text, value) => {
    expect(parseCellText(field, text)).toBe(value);
  });

  it('prints an address as universe and slot', () => {
    expect(formatCell('address', 613)).toBe('2:101');
  });
});
