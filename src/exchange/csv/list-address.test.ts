import { describe, expect, it } from 'vitest';
import { formatAddress } from '#engine/address/notation.ts';
import { addressStyle, placeAddress, readListAddress } from './list-address.ts';

/** Each cell of a column as universe and slot, `?` for what is no address. */
function readColumn(cells: readonly string[], universe: number | null = null): string[] {
  const style = addressStyle(cells);
  return cells.map((cell) => {
    const read = readListAddress(cell, style);
    const address = read && placeAddress(read.universe ?? universe, read.number);
    return address === undefined ? '?' : formatAddress(address);
  });
}

describe('addresses in lists', () => {
  it.each([
    [['2/101', '2.101', '2:101', '2 / 101', 'U2.101', 'Univ 2 101', 'DMX 2:101'], '2:101'],
    [
      ['U2 A101', 'U2A101', 'U2-101', 'u2 / a 101', 'Uni 2 ch 101', '2 ch 101', '2A101', 'Universe 2 address 101'],
      '2:101',
    ],
    [['613', '613.0', '0613'], '2:101'],
    [['2/101-116', '2.101 - 2.116', '613-628'], '2:101'],
  ])('reads %j as %s', (cells, expected) => {
    expect(cells.flatMap((cell) => readColumn([cell]))).toEqual(cells.map(() => expected));
  });

  it.each([
    [
      [
        '2/513',
        '0/1',
        '64000/1',
        '2/0',
        'A/1',
        'A101',
        '2/1/1',
        'spare',
        '0',
        '1.2.3',
        '-5',
        'U613',
        'U2',
        '16ch',
        'DMX 101-116',
        'U2 A513',
      ],
    ],
  ])('reads none of %j', (cells) => {
    expect(cells.flatMap((cell) => readColumn([cell]))).toEqual(cells.map(() => '?'));
  });

  it('puts back a zero that a spreadsheet took, where the column has three digits', () => {
    expect(readColumn(['3.001', '3.12', '3.1', '3.018'])).toEqual(['3:1', '3:120', '3:100', '3:18']);
    expect(readColumn(['3.1', '3.12', '3.120'])).toEqual(['3:1', '3:12', '3:120']);
  });

  it('takes 2-101 for universe and slot only where it cannot be a range', () => {
    expect(readColumn(['1-1', '1-17', '2-1'])).toEqual(['1:1', '1:17', '2:1']);
    expect(readColumn(['1-16', '17-32'])).toEqual(['1:1', '1:17']);
  });

  it('takes a number beside its universe for a slot, or for the same address counted through', () => {
    expect(readColumn(['101'], 2)).toEqual(['2:101']);
    expect(readColumn(['613'], 2)).toEqual(['2:101']);
    expect(readColumn(['613'], 3)).toEqual(['?']);
  });
});
