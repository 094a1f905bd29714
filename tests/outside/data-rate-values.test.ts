import { describe, expect, it } from 'vitest';
import { dataRate, payloadBytes, USUAL_RATE, universesOnLink, wireBytes } from '#engine/network/data-rate.ts';
import { frameRate, frameTime } from '#engine/network/dmx-frame.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R: read in the source named (Art-Net 4, ANSI E1.31-2016); R2: read in a
// tester's manual or another secondary source of ANSI E1.11; C: computed from a rule read there.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

describe('DMX512-A frames', () => {
  it.each(rows('dmx-time'))('[NW1] value %s', (_n, { input, expected }) => {
    const [, slots, end] = /^slots=(\d+), (transmitter|receiver) minimums$/.exec(input) ?? [];
    const which = end === 'receiver' ? 'receiver' : 'transmitter';
    expect(`${frameTime(Number(slots), which)} us, ${frameRate(Number(slots), which).toFixed(2)} Hz`).toBe(expected);
  });

  it('[NW3] a line carries one universe of 512 slots at the usual rate, and not two', () => {
    const each = { carrier: 'dmx512', slots: 512, rate: USUAL_RATE } as const;
    expect(universesOnLink(250_000, each)).toBe(1);
    expect(dataRate({ ...each, universes: 1 }).payload).toBe(513);
  });
});

describe('sACN and Art-Net on Ethernet', () => {
  const carrierOf = (input: string) => (input.startsWith('sACN') ? 'sacn' : 'art-net');

  it.each(rows('bandwidth'))('[NW2] [NW3] value %s', (_n, { input, expected }) => {
    const [, slots, rate] = /(\d+) slots, (\d+) Hz/.exec(input) ?? [];
    const each = { carrier: carrierOf(input), slots: Number(slots), rate: Number(rate) } as const;
    const { payload, bitsPerSecond } = dataRate({ ...each, universes: 1 });
    const mega = (bitsPerSecond / 1e6).toFixed(4);
    const said = `${wireBytes(payload)} wire bytes, ${mega} Mbit/s, ${universesOnLink(100e6, each)} universes on 100M`;
    expect(said).toBe(expected);
    expect(dataRate({ ...each, universes: 7 }).bytesPerSecond).toBeCloseTo((bitsPerSecond * 7) / 8, 6);
  });

  it('[NW2] values 50, 66: bytes of a packet', () => {
    const bytes = (carrier: 'sacn' | 'art-net', ...slots: number[]) =>
      `${slots.map((each) => payloadBytes(carrier, each)).join(' / ')} bytes`;
    expect(bytes('art-net', 512, 24)).toBe(values['50'].expected);
    expect(bytes('sacn', 512, 24, 1)).toBe(values['66'].expected);
  });

  it('[NW2] value 54: ArtDmx has an even number of slots', () => {
    expect(values['54'].expected).toBe('invalid: must be even, 2..512');
    for (const slots of [511, 1, 0, 514]) expect(() => payloadBytes('art-net', slots)).toThrow();
    expect(payloadBytes('art-net', 2)).toBe(20);
  });

  it('pads the shortest packets to the least frame of Ethernet', () => {
    // ArtSync, 14 bytes: 84 on the wire (computed from IEEE 802.3).
    expect(wireBytes(14)).toBe(84);
  });

  it('has rows of each kind', () => {
    expect([rows('dmx-time').length, rows('bandwidth').length]).toEqual([8, 3]);
  });
});
