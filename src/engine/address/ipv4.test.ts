import { BlockList, isIPv4 } from 'node:net';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { formatIpv4, type Ipv4, isNeighbour, maskLength, parseIpv4, parseMask } from './ipv4.ts';

describe('addresses of the network', () => {
  it('[AD13] are read as the library of Node reads them', () => {
    const rng = seededRng(7);
    const parts = ['0', '1', '2', '10', '127', '255', '256', '01', '', 'a', '1e1', ' 1', '-1'];
    for (let round = 0; round < 5000; round++) {
      const text = Array.from({ length: 3 + rng.int(3) }, () => rng.pick(parts)).join('.');
      const address = parseIpv4(text);
      expect(address !== null, text).toBe(isIPv4(text.trim()));
      if (address !== null) expect(formatIpv4(address)).toBe(text.trim());
    }
  });

  it('[AD13] are neighbours as BlockList of Node has them in one subnet', () => {
    const rng = seededRng(8);
    for (let round = 0; round < 5000; round++) {
      const mine = rng.int(2 ** 32) as Ipv4;
      const length = rng.int(33);
      const mask = parseMask(`/${length}`) as Ipv4;
      const other = (rng.int(2) === 0 ? rng.int(2 ** 32) : (mine ^ rng.int(2 ** rng.int(32))) >>> 0) as Ipv4;
      const subnet = new BlockList();
      subnet.addSubnet(formatIpv4(mine), length);
      expect(isNeighbour(mine, mask, other)).toBe(subnet.check(formatIpv4(other)));
      expect(maskLength(mask)).toBe(length);
      expect(parseMask(formatIpv4(mask))).toBe(mask);
    }
  });

  it.each(['255.0.255.0', '0.255.0.0', '/33', '255.255.255.1', 'all', ''])('[AD13] no mask is %j', (text) => {
    expect(parseMask(text)).toBe(null);
  });
});
