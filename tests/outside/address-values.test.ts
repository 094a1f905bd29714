import { describe, expect, it } from 'vitest';
import { addressOfPort, physicalPort, staticAddress } from '#engine/address/art-net-node.ts';
import { portAddressByConvention, sacnByConvention } from '#engine/address/convention.ts';
import { addressOfSwitches, dipSwitches } from '#engine/address/dip-switches.ts';
import { formatPortAddress, isPortAddress, portAddress, portAddressBytes } from '#engine/address/port-address.ts';
import { DISCOVERY_UNIVERSE, isSacnUniverse, multicastGroup } from '#engine/address/sacn-universe.ts';
import { absolute, slotOf } from '#engine/model/address.ts';
import { CONVENTIONS } from '#engine/model/card.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R: read in the source named (Art-Net 4 protocol release, ANSI
// E1.31-2016); R2: read in a manual or another secondary source; C: computed from a rule read there.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

const numbersIn = (text: string) => (text.match(/\d+/g) ?? []).map(Number);

/** `1+3+6+7` for the switches that are on. */
const switchesOn = (switches: readonly boolean[] | null) =>
  switches === null
    ? 'not representable (error)'
    : switches.flatMap((on, at) => (on ? [at + 1] : [])).join('+') || 'none';

describe('address switches against device manuals', () => {
  const both = [
    ...rows('dip-A').map((row) => ['A', ...row] as const),
    ...rows('dip-B').map((row) => ['B', ...row] as const),
  ];
  it.each(both)('[AD11] variant %s, value %s', (variant, _n, { input, expected }) => {
    const slot = slotOf(absolute(1, numbersIn(input)[0] ?? 0));
    const switches = dipSwitches(slot, variant);
    expect(switchesOn(switches)).toBe(expected);
    if (switches !== null) expect(addressOfSwitches(switches, variant)).toBe(slot);
  });
});

describe('Port-Addresses and nodes against Art-Net 4', () => {
  it.each(rows('art-pa'))('[AD7] value %s', (_n, { input, expected }) => {
    const [net = -1, subNet = -1, universe = -1] = numbersIn(input);
    const address = portAddress({ net, subNet, universe });
    const bytes = portAddressBytes(address);
    const hex = (value: number, width: number) => `0x${value.toString(16).padStart(width, '0')}`;
    expect(`${address} = ${hex(address, 4)}; SubUni ${hex(bytes.subUni, 2)}, Net ${bytes.net}`).toBe(expected);
    expect(formatPortAddress(address).toLowerCase()).toBe(`${net}:${subNet}:${universe} (${hex(address, 4)})`);
  });

  it.each([
    ['47', [0x12, 0x45, 0x78, 0x98, 0x34, 0x76], 0x0010, 'off'],
    ['48', [0x12, 0x45, 0x78, 0x98, 0x34, 0x76], 0x0010, 'on'],
    ['49', [0x02, 0x00, 0x00, 0xff, 0x01, 0x02], 0xffff, 'off'],
  ] as const)('[AD10] value %s: the address a node gives itself', (n, mac, oem, addressSwitch) => {
    expect(staticAddress({ mac, oem, addressSwitch })).toBe(values[n].expected);
  });

  it.each(rows('art-port'))('[AD10] value %s: the Port-Address of a port', (_n, { input, expected }) => {
    const [netSwitch = -1, subSwitch = -1, portSwitch = -1] = numbersIn(input);
    const address = addressOfPort({ netSwitch, subSwitch, portSwitch });
    expect(`PA 0x0${address.toString(16)} = ${address}`).toBe(expected);
  });

  it.each(rows('art-bind'))('[AD10] value %s: the port of the device', (_n, { input, expected }) => {
    const [bindIndex = 0, ports = 0, port = 0] = numbersIn(input);
    expect(`physical port ${physicalPort(bindIndex, ports, port)}`).toBe(expected);
  });
});

describe('sACN universes against ANSI E1.31', () => {
  it.each(rows('sacn-mc'))('[AD8] value %s: multicast group', (_n, { input, expected }) => {
    const [universe = 0] = numbersIn(input);
    if (universe !== DISCOVERY_UNIVERSE && !isSacnUniverse(universe)) throw new Error(`no universe ${universe}`);
    const { ipv4, ethernet, ipv6 } = multicastGroup(universe);
    expect(`${ipv4}; MAC ${ethernet}; ${ipv6}`).toBe(expected);
  });

  it.each(rows('sacn-range'))('[AD8] value %s: reserved numbers', (_n, { input, expected }) => {
    expect(expected).toBe('reserved: reject as data');
    for (const universe of [...numbersIn(input), DISCOVERY_UNIVERSE]) expect(isSacnUniverse(universe)).toBe(false);
  });
});

describe('Port-Address and sACN number by a convention', () => {
  it.each(rows('map'))('[AD9] value %s', (_n, { input, expected }) => {
    const [net = -1, subNet = -1, universe = -1] = numbersIn(input);
    const address = portAddress({ net, subNet, universe });
    const [same, plusOne] = CONVENTIONS.map((convention) => sacnByConvention(address, convention));
    expect(`convention A: ${same ?? 'none (PA 0)'}; convention B: ${plusOne}`).toBe(expected);
    for (const [at, sacn] of [same, plusOne].entries()) {
      const convention = CONVENTIONS[at] ?? 'plus-one';
      if (sacn) expect(portAddressByConvention(sacn, convention)).toBe(address);
    }
  });

  // Limits computed from the rules: the same number holds for 1 to 32767, one more for 0 to 32767.
  it('[AD9] has no Port-Address above 32767, and none for sACN numbers beyond', () => {
    const last = (convention: (typeof CONVENTIONS)[number]) => {
      let found = 0;
      for (let universe = 32_000; universe < 33_000; universe++)
        if (isSacnUniverse(universe) && portAddressByConvention(universe, convention) !== null) found = universe;
      return found;
    };
    expect(CONVENTIONS.map(last)).toEqual([32_767, 32_768]);
    expect([isPortAddress(32_767), isPortAddress(32_768), isPortAddress(-1), isPortAddress(1.5)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('the rows', () => {
  it('are there, all of each group', () => {
    const groups = ['dip-A', 'dip-B', 'art-pa', 'art-ip', 'art-port', 'art-bind', 'sacn-mc', 'sacn-range', 'map'];
    expect(groups.map((group) => rows(group).length)).toEqual([10, 4, 7, 3, 1, 1, 8, 1, 5]);
  });
});
