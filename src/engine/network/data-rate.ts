import { unreachable } from '#base/unreachable.ts';
import { SLOTS } from '../model/address.ts';
import { frameBits } from './dmx-frame.ts';

/** What brings universes: DMX512-A (ANSI E1.11), sACN (ANSI E1.31), Art-Net 4. */
export type Carrier = 'dmx512' | 'sacn' | 'art-net';

/** How often each universe is sent where nothing else is known, in Hz: what 512 slots of DMX512 allow, rounded down. */
export const USUAL_RATE = 44;

export interface Stream {
  readonly carrier: Carrier;
  readonly universes: number;
  /** Of each universe, 1 to 512; ArtDmx sends an even number of at least 2. */
  readonly slots: number;
  /** Frames or packets of each universe in a second. */
  readonly rate: number;
}

export interface DataRate {
  /** Of one frame or packet: start code and slots, or what the UDP packet holds. */
  readonly payload: number;
  /** Of all universes, with everything around them on the line. */
  readonly bytesPerSecond: number;
  readonly bitsPerSecond: number;
}

/** What a packet of a universe needs before its slots (ANSI E1.31; Art-Net 4, ArtDmx). */
const HEADERS = { sacn: 126, 'art-net': 18 } as const;

/** Around a UDP packet on Ethernet: UDP 8, IPv4 20, Ethernet 14, check 4. The least there is of these, and preamble and gap behind it. */
const AROUND = 8 + 20 + 14 + 4;
const SHORTEST_FRAME = 64;
const BETWEEN = 8 + 12;

/** Bytes of one packet on an Ethernet line, from preamble to gap. Of IPv4 without a VLAN tag, which would add 4. [NW2] */
export const wireBytes = (payload: number): number => Math.max(SHORTEST_FRAME, payload + AROUND) + BETWEEN;

/** Bytes that one frame or packet of a universe holds; throws for a number of slots it cannot have. [NW2] */
export function payloadBytes(carrier: Carrier, slots: number): number {
  if (!Number.isInteger(slots) || slots < 1 || slots > SLOTS) throw new Error(`no universe has ${slots} slots`);
  switch (carrier) {
    case 'dmx512':
      return slots + 1;
    case 'sacn':
      return HEADERS.sacn + slots;
    case 'art-net':
      if (slots % 2 !== 0) throw new Error(`ArtDmx has an even number of slots, not ${slots}`);
      return HEADERS['art-net'] + slots;
    default:
      return unreachable(carrier);
  }
}

/** What universes need of a line in a second, sent at full rate. [NW2] */
export function dataRate({ carrier, universes, slots, rate }: Stream): DataRate {
  const payload = payloadBytes(carrier, slots);
  const bits = carrier === 'dmx512' ? frameBits(slots) : wireBytes(payload) * 8;
  const bitsPerSecond = bits * rate * universes;
  return { payload, bytesPerSecond: bitsPerSecond / 8, bitsPerSecond };
}

/** How many universes a link carries at the very most, filled to the last bit; a DMX512 line carries one. [NW3] */
export function universesOnLink(linkBitsPerSecond: number, each: Omit<Stream, 'universes'>): number {
  return Math.floor(linkBitsPerSecond / dataRate({ ...each, universes: 1 }).bitsPerSecond);
}
