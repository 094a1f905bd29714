import { describe, expect, it } from 'vitest';
import { isPortAddress, type PortAddress } from '#engine/address/port-address.ts';
import { isSacnUniverse, type SacnUniverse } from '#engine/address/sacn-universe.ts';
import {
  writeArtDmx,
  writeArtPoll,
  writeArtPollReply,
  writeArtSync,
  writeArtTodControl,
  writeArtTodData,
  writeArtTodRequest,
} from '#exchange/packets/art-net.ts';
import {
  isInSequence,
  SACN_TIMES,
  sequenceStep,
  writeSacnData,
  writeSacnDiscovery,
  writeSacnSync,
} from '#exchange/packets/sacn.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R: read in the source named (Art-Net 4, ANSI E1.31-2016); C: computed from a
// rule read there, those with `tshark` beside them read back by that program.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);
const value = (n: number) => values[String(n) as keyof typeof values];

const hex = (bytes: Uint8Array) => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
const numbersIn = (text: string) => (text.match(/\d+/g) ?? []).map(Number);
const at = (number: number): PortAddress => {
  if (!isPortAddress(number)) throw new Error(`${number}`);
  return number;
};
const sacn = (number: number): SacnUniverse => {
  if (!isSacnUniverse(number)) throw new Error(`${number}`);
  return number;
};
const SOURCE = { id: Uint8Array.from({ length: 16 }, (_, n) => n), name: 'Dock' };
const levels = (count: number) => new Uint8Array(count).fill(9);
const dmx = (slots: number) => writeArtDmx({ portAddress: at(0x123), sequence: 1, physical: 0, slots: levels(slots) });
const data = (slots: number) =>
  writeSacnData({
    source: SOURCE,
    universe: sacn(7),
    priority: 100,
    sequence: 3,
    options: { preview: false, last: false },
    slots: levels(slots),
  });
const word = (packet: Uint8Array, offset: number) => `0x${hex(packet.subarray(offset, offset + 2))}`;

describe('Art-Net packets', () => {
  it('[PK1] value 50: length of ArtDmx', () => {
    const said = numbersIn(value(50).input).map((slots) => dmx(slots).length);
    expect(`${said.join(' / ')} bytes`).toBe(value(50).expected);
  });

  it('[PK2] value 51: lengths of the others', () => {
    const reply = {
      address: Uint8Array.of(2, 0, 0, 1),
      portName: 'Dock',
      longName: 'Dock left',
      net: 1,
      subNet: 2,
      outputs: [3],
      bindIndex: 1,
    };
    const packets = [
      writeArtPoll(),
      writeArtPollReply(reply),
      writeArtSync(),
      writeArtTodControl(at(1)),
      writeArtTodRequest(0, [1]),
    ];
    expect(`${packets.map(({ length }) => length).join(' / ')} bytes`).toBe(value(51).expected);
    // Where the fields stand: facts of Art-Net 4, ArtPollReply.
    const bytes = packets[1] ?? new Uint8Array();
    expect([bytes[18], bytes[19], bytes[173], bytes[190], bytes[211]]).toEqual([1, 2, 1, 3, 1]);
    expect(hex(bytes.subarray(8, 16))).toBe('0021020000013619');
  });

  it('[PK2] value 52: length of ArtTodData', () => {
    expect(`${writeArtTodData(at(1), 1, [new Uint8Array(6), new Uint8Array(6)]).length} bytes`).toBe(
      value(52).expected,
    );
  });

  it('[PK1] value 53: the head of ArtDmx', () => {
    expect(hex(dmx(512).subarray(0, 18))).toBe(value(53).expected);
  });

  it('[PK1] value 54: no odd number of slots, and no more than 512', () => {
    expect(value(54).expected).toBe('invalid: must be even, 2..512');
    for (const slots of [...numbersIn(value(54).input), 0, 514]) expect(() => dmx(slots), String(slots)).toThrow();
    expect(dmx(2).length).toBe(20);
  });
});

describe('sACN packets', () => {
  it('[PK3] value 66: length of levels', () => {
    const said = [512, 24, 1].map((slots) => data(slots).length);
    expect(`data packet 512 / 24 / 1 slots: ${said.join(' / ')} bytes`).toBe(
      `${value(66).input}: ${value(66).expected}`,
    );
  });

  it.each(rows('sacn-flags'))('[PK3] value %s: flags and lengths', (_n, { input, expected }) => {
    const packet = data(numbersIn(input)[0] ?? 0);
    expect([16, 38, 115].map((offset) => word(packet, offset)).join(', ')).toBe(expected);
  });

  it('[PK3] levels stand where the standard has them', () => {
    const packet = data(3);
    // Preamble, packet id, priority, universe, number of slots and start code: ANSI E1.31, clauses 5 to 7.
    expect(hex(packet.subarray(0, 16))).toBe('001000004153432d45312e3137000000');
    expect([packet[108], packet[111], packet[114], packet[124], packet[125]]).toEqual([100, 3, 7, 4, 0]);
    expect([...packet.subarray(126)]).toEqual([9, 9, 9]);
    expect(() => data(513)).toThrow();
  });

  it('[PK4] value 69: synchronization', () => {
    const packet = writeSacnSync(SOURCE, sacn(7), 1);
    expect(`${packet.length} bytes; ${word(packet, 16)}, ${word(packet, 38)}`).toBe(value(69).expected);
  });

  it('[PK4] value 70: universe discovery', () => {
    const numbers = (count: number) => Array.from({ length: count }, (_, n) => sacn(count - n));
    const said = numbersIn(value(70).input).map((count) => writeSacnDiscovery(SOURCE, numbers(count))[0]?.length);
    expect(`${said.join(' / ')} bytes`).toBe(value(70).expected);
    const [first, second, ...more] = writeSacnDiscovery(SOURCE, numbers(513));
    expect([first?.length, second?.length, more.length, first?.[118], second?.[118], second?.[119]]).toEqual([
      1144, 122, 0, 0, 1, 1,
    ]);
    expect(hex((first ?? new Uint8Array()).subarray(120, 124))).toBe('00010002');
  });

  it.each(rows('sacn-seq'))('[PK5] value %s: sequence', (_n, { input, expected }) => {
    const [last = 0, next = 0] = numbersIn(input);
    const step = sequenceStep(last, next);
    expect(`difference ${step}: ${isInSequence(last, next) ? 'accept' : 'discard'}`).toBe(expected);
  });

  it('[PK5] a sequence is taken by the rule that the standard writes, for every two', () => {
    for (let last = 0; last < 256; last++) {
      for (let next = 0; next < 256; next++) {
        const [d = 0] = new Int8Array([next - last]);
        expect(isInSequence(last, next)).toBe(!(d > -20 && d <= 0));
      }
    }
  });

  it('[PK6] value 78: times', () => {
    const { lossMs, keepAliveMs, repeats, endings, discoveryMs } = SACN_TIMES;
    const said = `${lossMs / 1000} s / ${keepAliveMs.least}-${keepAliveMs.most} ms after ${repeats} repeats / ${endings} packets / ${discoveryMs / 1000} s`;
    expect(said).toBe(value(78).expected);
  });

  it('are there, all of each group', () => {
    const groups = ['art-len', 'art-hex', 'sacn-len', 'sacn-flags', 'sacn-seq', 'sacn-time'];
    expect(groups.map((group) => rows(group).length)).toEqual([4, 1, 3, 2, 7, 1]);
  });
});
