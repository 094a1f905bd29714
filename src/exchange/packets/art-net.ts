import { type PortAddress, portAddressBytes } from '#engine/address/port-address.ts';
import { payloadBytes } from '#engine/network/data-rate.ts';
import { type Layout, pack } from './layout.ts';

/** What every packet of Art-Net 4 begins with, and what most have behind it; the operation is sent low byte first. */
const ID = new TextEncoder().encode('Art-Net\0');
const VERSION = 14;
const HEAD: Layout = [
  ['id', 8],
  ['operation', 2],
];
const HEAD_WITH_VERSION: Layout = [...HEAD, ['version', 2]];

/** Operations of Art-Net 4. */
const OPERATIONS = {
  poll: 0x2000,
  pollReply: 0x2100,
  dmx: 0x5000,
  sync: 0x5200,
  todRequest: 0x8000,
  todData: 0x8100,
  todControl: 0x8200,
} as const;

type Operation = keyof typeof OPERATIONS;

const lowFirst = (value: number) => Uint8Array.of(value & 255, value >> 8);

const start = (operation: Operation) => ({ id: ID, operation: lowFirst(OPERATIONS[operation]) });

export interface ArtDmx {
  readonly portAddress: PortAddress;
  /** 1 to 255; 0: the receiver is not to put packets in order. */
  readonly sequence: number;
  /** The input it came in at; it says nothing of where it goes. */
  readonly physical: number;
  /** Slot 1 first: an even number of 2 to 512. */
  readonly slots: Uint8Array;
}

/** Levels of a universe. Throws for a number of slots that ArtDmx does not carry. Source: Art-Net 4, ArtDmx. [PK1] */
export function writeArtDmx({ portAddress, sequence, physical, slots }: ArtDmx): Uint8Array {
  payloadBytes('art-net', slots.length);
  const { net, subUni } = portAddressBytes(portAddress);
  const layout: Layout = [
    ...HEAD_WITH_VERSION,
    ['sequence', 1],
    ['physical', 1],
    ['subUni', 1],
    ['net', 1],
    ['length', 2],
    ['slots', slots.length],
  ];
  const fields = { sequence, physical, subUni, net, length: slots.length, slots };
  return pack(layout, { ...start('dmx'), version: VERSION, ...fields });
}

const POLL: Layout = [
  ...HEAD_WITH_VERSION,
  ['flags', 1],
  ['diagnosticPriority', 1],
  ['targetTop', 2],
  ['targetBottom', 2],
  ['maker', 2],
  ['oem', 2],
];

/** Asks who is there; with `targets` only those who listen to one of these Port-Addresses answer. Source: Art-Net 4, ArtPoll. [PK2] */
export function writeArtPoll(targets?: { readonly bottom: PortAddress; readonly top: PortAddress }): Uint8Array {
  const asked = targets === undefined ? {} : { flags: 0x20, targetTop: targets.top, targetBottom: targets.bottom };
  return pack(POLL, { ...start('poll'), version: VERSION, ...asked });
}

/** What a node answers, field by field. Source: Art-Net 4, ArtPollReply. */
const POLL_REPLY: Layout = [
  ...HEAD,
  ['address', 4],
  ['udpPort', 2],
  ['firmware', 2],
  ['net', 1],
  ['subNet', 1],
  ['oem', 2],
  ['ubea', 1],
  ['status1', 1],
  ['maker', 2],
  ['portName', 18],
  ['longName', 64],
  ['report', 64],
  ['ports', 2],
  ['portTypes', 4],
  ['goodInput', 4],
  ['goodOutputA', 4],
  ['inputs', 4],
  ['outputs', 4],
  ['priority', 1],
  ['macro', 1],
  ['remote', 1],
  ['spare', 3],
  ['style', 1],
  ['mac', 6],
  ['boundTo', 4],
  ['bindIndex', 1],
  ['status2', 1],
  ['goodOutputB', 4],
  ['status3', 1],
  ['responder', 6],
  ['user', 2],
  ['refreshRate', 2],
  ['queuePolicy', 1],
  ['filler', 10],
];

export interface ArtPollReply {
  /** Four bytes. */
  readonly address: Uint8Array;
  /** At most 17 and 63 bytes as text. */
  readonly portName: string;
  readonly longName: string;
  readonly net: number;
  readonly subNet: number;
  /** The low four bits of each output, at most four. */
  readonly outputs: readonly number[];
  /** 1 for the device itself. */
  readonly bindIndex: number;
}

const PORT = 0x1936;
/** A port that can put DMX512 out. */
const OUTPUT = 0x80;
/** 15 bit Port-Addresses. */
const WIDE_ADDRESSES = 0x08;

/** What a node says of itself and of up to four outputs. Source: Art-Net 4, ArtPollReply. [PK2] */
export function writeArtPollReply(reply: ArtPollReply): Uint8Array {
  const { address, portName, longName, net, subNet, outputs, bindIndex } = reply;
  const text = (value: string, bytes: number) => {
    const encoded = new TextEncoder().encode(value);
    if (encoded.length >= bytes) throw new Error(`a name of ${encoded.length} bytes, where ${bytes - 1} are room`);
    return encoded;
  };
  return pack(POLL_REPLY, {
    ...start('pollReply'),
    address,
    udpPort: lowFirst(PORT),
    net,
    subNet,
    portName: text(portName, 18),
    longName: text(longName, 64),
    ports: outputs.length,
    portTypes: Uint8Array.from(outputs, () => OUTPUT),
    outputs: Uint8Array.from(outputs),
    bindIndex,
    status2: WIDE_ADDRESSES,
  });
}

/** Lets all nodes put out what they hold. Source: Art-Net 4, ArtSync. [PK2] */
export const writeArtSync = (): Uint8Array =>
  pack([...HEAD_WITH_VERSION, ['aux', 2]], { ...start('sync'), version: VERSION });

const TOD_REQUEST: Layout = [
  ...HEAD_WITH_VERSION,
  ['filler', 2],
  ['spare', 7],
  ['net', 1],
  ['command', 1],
  ['count', 1],
  ['addresses', 32],
];

/** Asks which RDM devices are at ports of one Net, at most 32. Source: Art-Net 4, ArtTodRequest. [PK2] */
export function writeArtTodRequest(net: number, subUnis: readonly number[]): Uint8Array {
  const asked = { net, count: subUnis.length, addresses: Uint8Array.from(subUnis) };
  return pack(TOD_REQUEST, { ...start('todRequest'), version: VERSION, ...asked });
}

const TOD_CONTROL: Layout = [...HEAD_WITH_VERSION, ['spare', 9], ['net', 1], ['command', 1], ['address', 1]];

/** Has a port look for its RDM devices anew. Source: Art-Net 4, ArtTodControl. [PK2] */
export function writeArtTodControl(portAddress: PortAddress): Uint8Array {
  const { net, subUni } = portAddressBytes(portAddress);
  return pack(TOD_CONTROL, { ...start('todControl'), version: VERSION, net, command: 1, address: subUni });
}

/** The RDM devices of a port, six bytes each, at most 200 in a packet. Source: Art-Net 4, ArtTodData. [PK2] */
export function writeArtTodData(portAddress: PortAddress, port: number, uids: readonly Uint8Array[]): Uint8Array {
  if (uids.length > 200 || uids.some((uid) => uid.length !== 6)) throw new Error('at most 200 UIDs of six bytes');
  const layout: Layout = [
    ...HEAD_WITH_VERSION,
    ['rdmVersion', 1],
    ['port', 1],
    ['spare', 6],
    ['bindIndex', 1],
    ['net', 1],
    ['response', 1],
    ['address', 1],
    ['total', 2],
    ['block', 1],
    ['count', 1],
    ['uids', 6 * uids.length],
  ];
  const { net, subUni } = portAddressBytes(portAddress);
  const counts = { total: uids.length, count: uids.length, uids: Uint8Array.from(uids.flatMap((uid) => [...uid])) };
  const fields = { rdmVersion: 1, port, bindIndex: 1, net, address: subUni, ...counts };
  return pack(layout, { ...start('todData'), version: VERSION, ...fields });
}
