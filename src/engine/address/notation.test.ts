import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { absolute, isAbsolute, LAST_ABSOLUTE, slotOf, universeOf } from '../model/address.ts';
import { formatAddress, parseAddress } from './notation.ts';

describe('addresses', () => {
  it('[AD1] universe and slot make the absolute address they were made of', () => {
    const rng = seededRng(1);
    for (const address of [
      1,
      512,
      513,
      LAST_ABSOLUTE,
      ...Array.from({ length: 2000 }, () => 1 + rng.int(LAST_ABSOLUTE)),
    ]) {
      if (!isAbsolute(address)) throw new Error(`${address}`);
      expect(absolute(universeOf(address), slotOf(address))).toBe(address);
    }
  });

  it.each([
    [0, 1],
    [64000, 1],
    [1, 0],
    [1, 513],
    [1, 1.5],
    [Number.NaN, 1],
  ])('[AD1] there is no %d:%d', (universe, slot) => {
    expect(() => absolute(universe, slot)).toThrow('no such address');
  });

  it('[AD2] reads what it printed, and the other ways to write it', () => {
    const rng = seededRng(3);
    for (let n = 0; n < 2000; n++) {
      const address = absolute(1 + rng.int(63999), 1 + rng.int(512));
      const text = formatAddress(address);
      const [universe = '', slot = ''] = text.split(':');
      const ways = [
        text,
        `${universe}/${slot}`,
        `${universe}.${slot}`,
        ` ${universe} : ${slot.padStart(3, '0')} `,
        String(address),
      ];
      for (const way of ways) expect(parseAddress(way)).toEqual({ ok: true, value: address });
    }
  });

  it.each([
    ['', 'not-an-address'],
    ['2:', 'not-an-address'],
    ['-1', 'not-an-address'],
    ['2:1:1', 'not-an-address'],
    ['1e3', 'not-an-address'],
    ['2,101', 'not-an-address'],
    ['0', 'universe-out-of-range'],
    ['0:5', 'universe-out-of-range'],
    ['64000:1', 'universe-out-of-range'],
    ['999999999', 'universe-out-of-range'],
    ['2:0', 'slot-out-of-range'],
    ['2.513', 'slot-out-of-range'],
  ])('[AD2] refuses %j: %s', (text, error) => {
    expect(parseAddress(text)).toEqual({ ok: false, error });
  });
});
