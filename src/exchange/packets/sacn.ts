import { isSacnUniverse, type SacnUniverse } from '#engine/address/sacn-universe.ts';
import { payloadBytes } from '#engine/network/data-rate.ts';
import { type Layout, lengthOf, pack } from './layout.ts';

/** Times and counts of ANSI E1.31. */
export const SACN_TIMES = {
  /** Without a packet for so long, a source is lost. */
  lossMs: 2500,
  /** Levels that stay are sent so often at full rate, then once in `keepAliveMs`. */
  repeats: 3,
  keepAliveMs: { least: 800, most: 1000 },
  /** Packets that say that a stream ends. */
  endings: 3,
  /** From one list of universes to the next. */
  discoveryMs: 10_000,
} as const;

const HIGHEST_PRIORITY = 200;

const PACKET_ID = new TextEncoder().encode('ASC-E1.17\0\0\0');

const ROOT: Layout = [
  ['preamble', 2],
  ['postamble', 2],
  ['packetId', 12],
  ['rootLength', 2],
  ['rootVector', 4],
  ['source', 16],
  ['framingLength', 2],
  ['framingVector', 4],
];

/** Where the layers begin whose length a packet says: each goes to the end of the packet. */
const ROOT_AT = 16;
const FRAMING_AT = 38;

/** Flags in the upper four bits, below them the bytes from this field to the end. */
const layerLength = (total: number, at: number): number => 0x7000 | (total - at);

const VECTORS = { data: 0x0000_0004, extended: 0x0000_0008 } as const;

const root = (total: number, source: Uint8Array, vector: keyof typeof VECTORS, framingVector: number) => ({
  preamble: 0x0010,
  packetId: PACKET_ID,
  rootLength: layerLength(total, ROOT_AT),
  rootVector: VECTORS[vector],
  source,
  framingLength: layerLength(total, FRAMING_AT),
  framingVector,
});

/** Who sends: its UUID as 16 bytes, and its name, of at most 63 bytes as text. */
export interface SacnSource {
  readonly id: Uint8Array;
  readonly name: string;
}

function nameOf({ name }: SacnSource): Uint8Array {
  const bytes = new TextEncoder().encode(name);
  if (bytes.length > 63) throw new Error(`the name of a source has at most 63 bytes, not ${bytes.length}`);
  return bytes;
}

export interface SacnData {
  readonly source: SacnSource;
  readonly universe: SacnUniverse;
  /** 0 to 200. */
  readonly priority: number;
  /** 0 to 255, and round again. */
  readonly sequence: number;
  /** `preview`: not for a live rig; `last`: the stream ends. */
  readonly options: { readonly preview: boolean; readonly last: boolean };
  /** Slot 1 first, 1 to 512. */
  readonly slots: Uint8Array;
}

const DATA_HEAD: Layout = [
  ...ROOT,
  ['name', 64],
  ['priority', 1],
  ['syncAddress', 2],
  ['sequence', 1],
  ['options', 1],
  ['universe', 2],
  ['dmpLength', 2],
  ['dmpVector', 1],
  ['addressType', 1],
  ['firstAddress', 2],
  ['increment', 2],
  ['count', 2],
  ['startCode', 1],
];

/** Where the layer of levels begins. */
const DMP_AT = 115;

/** Levels of a universe. Throws for what a packet cannot say. Source: ANSI E1.31. [PK3] */
export function writeSacnData({ source, universe, priority, sequence, options, slots }: SacnData): Uint8Array {
  if (!isSacnUniverse(universe)) throw new Error(`no levels for sACN ${universe}`);
  if (priority > HIGHEST_PRIORITY) throw new Error(`a priority is at most ${HIGHEST_PRIORITY}, not ${priority}`);
  const total = payloadBytes('sacn', slots.length);
  return pack([...DATA_HEAD, ['slots', slots.length]], {
    ...root(total, source.id, 'data', 2),
    name: nameOf(source),
    priority,
    sequence,
    options: (options.preview ? 0x80 : 0) | (options.last ? 0x40 : 0),
    universe,
    dmpLength: layerLength(total, DMP_AT),
    dmpVector: 2,
    addressType: 0xa1,
    increment: 1,
    count: slots.length + 1,
    slots,
  });
}

const SYNC: Layout = [...ROOT, ['sequence', 1], ['syncAddress', 2], ['reserved', 2]];

/** Lets receivers put out together what was sent for this address. Source: ANSI E1.31. [PK4] */
export function writeSacnSync(source: SacnSource, address: SacnUniverse, sequence: number): Uint8Array {
  return pack(SYNC, { ...root(lengthOf(SYNC), source.id, 'extended', 1), sequence, syncAddress: address });
}

const DISCOVERY_HEAD: Layout = [
  ...ROOT,
  ['name', 64],
  ['reserved', 4],
  ['listLength', 2],
  ['listVector', 4],
  ['page', 1],
  ['lastPage', 1],
];
const LIST_AT = 112;
const PER_PAGE = 512;

/** Says which universes a source sends: as many packets as it takes, 512 universes in each, in order. Source: ANSI E1.31. [PK4] */
export function writeSacnDiscovery(source: SacnSource, universes: readonly SacnUniverse[]): readonly Uint8Array[] {
  const sorted = [...new Set(universes)].sort((a, b) => a - b);
  const lastPage = Math.max(0, Math.ceil(sorted.length / PER_PAGE) - 1);
  return Array.from({ length: lastPage + 1 }, (_, page) => {
    const here = sorted.slice(page * PER_PAGE, (page + 1) * PER_PAGE);
    const layout: Layout = [...DISCOVERY_HEAD, ['universes', 2 * here.length]];
    const total = lengthOf(layout);
    return pack(layout, {
      ...root(total, source.id, 'extended', 2),
      name: nameOf(source),
      listLength: layerLength(total, LIST_AT),
      listVector: 1,
      page,
      lastPage,
      universes: Uint8Array.from(here.flatMap((universe) => [universe >> 8, universe & 255])),
    });
  });
}

/** How far a packet is ahead of the one before, -128 to 127; sequences go round at 256. */
export const sequenceStep = (last: number, next: number): number => ((next - last + 384) & 255) - 128;

/** Whether a packet is taken: one from 1 to 19 behind, or the same again, comes too late. Source: ANSI E1.31. [PK5] */
export function isInSequence(last: number, next: number): boolean {
  const step = sequenceStep(last, next);
  return step > 0 || step <= -20;
}
