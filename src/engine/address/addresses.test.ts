import { describe, expect, it } from 'vitest';
import { absolute, slotOf } from '../model/address.ts';
import { CONVENTIONS } from '../model/card.ts';
import { portAddressByConvention, sacnByConvention } from './convention.ts';
import { ADDRESS_SWITCHES, addressOfSwitches, dipSwitches } from './dip-switches.ts';
import { formatPortAddress, isPortAddress, portAddress, portAddressParts, readPortAddress } from './port-address.ts';
import { isSacnUniverse, multicastGroup } from './sacn-universe.ts';

describe('address switches', () => {
  it('[AD11] read back as the address they were set to, every address in both variants', () => {
    for (let slot = 1; slot <= 512; slot++) {
      const address = slotOf(absolute(1, slot));
      for (const variant of ['A', 'B'] as const) {
        const switches = dipSwitches(address, variant);
        if (variant === 'A' && slot === 512) expect(switches).toBeNull();
        else expect(addressOfSwitches(switches ?? [], variant)).toBe(slot);
      }
    }
  });

  it('[AD11] every way they can stand is one address, but for all off where they hold the address', () => {
    for (let held = 0; held < 2 ** ADDRESS_SWITCHES; held++) {
      const switches = Array.from({ length: ADDRESS_SWITCHES }, (_, at) => Math.floor(held / 2 ** at) % 2 === 1);
      expect(addressOfSwitches(switches, 'A')).toBe(held === 0 ? null : held);
      expect(addressOfSwitches(switches, 'B')).toBe(held + 1);
    }
    expect(addressOfSwitches([true], 'A')).toBeNull();
  });
});

describe('numbers of universes on a network', () => {
  it('[AD7] a Port-Address is its parts and nothing else', () => {
    const seen = new Set<number>();
    for (let value = 0; value <= 32_767; value++) {
      if (!isPortAddress(value)) throw new Error(`${value}`);
      expect(portAddress(portAddressParts(value))).toBe(value);
      seen.add(value);
    }
    expect(seen.size).toBe(128 * 16 * 16);
    const read = (text: string) => readPortAddress(text);
    for (const address of [0, 1, 15, 16, 255, 256, 0x123, 32_767].filter(isPortAddress)) {
      const { net, subNet, universe } = portAddressParts(address);
      const written = [
        formatPortAddress(address),
        `${net}:${subNet}:${universe}`,
        ` ${address} `,
        `0x${address.toString(16)}`,
      ];
      expect(written.map(read)).toEqual([address, address, address, address]);
    }
    expect(
      ['', '0:16:0', '128:0:0', '0:0', '32768', '-1', '1.5', '0x8000', 'F', '0:0:0x1', '(0x0001)'].map(read),
    ).toEqual(Array.from({ length: 11 }, () => null));
    for (const net of [128, -1, 0.5]) expect(() => portAddress({ net, subNet: 0, universe: 0 })).toThrow();
    expect(() => portAddress({ net: 0, subNet: 16, universe: 0 })).toThrow();
  });

  it('[AD8] every sACN number has a group of its own', () => {
    const groups = new Set<string>();
    for (let universe = 1; universe <= 63_999; universe++)
      if (isSacnUniverse(universe)) groups.add(multicastGroup(universe).ipv4);
    expect(groups.size).toBe(63_999);
  });

  it('[AD9] a convention leads there and back, or nowhere', () => {
    const everySeventh = Array.from({ length: 9142 }, (_, at) => 1 + at * 7);
    for (const convention of CONVENTIONS) {
      for (const universe of everySeventh.filter(isSacnUniverse)) {
        const address = portAddressByConvention(universe, convention);
        if (address === null) expect(universe).toBeGreaterThan(32_767);
        else expect(sacnByConvention(address, convention)).toBe(universe);
      }
    }
  });
});
