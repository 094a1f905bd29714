import type { Brand } from '#base/brand.ts';

/** The 15 bit number by which Art-Net names a universe, 0 to 32767 (Art-Net 4). It says nothing of the number a show gives it. */
export type PortAddress = Brand<number, 'PortAddress'>;

const LAST_PORT_ADDRESS = 0x7fff;

/** A Port-Address as its three parts: Net 0 to 127, Sub-Net and Universe 0 to 15. */
export interface PortAddressParts {
  readonly net: number;
  readonly subNet: number;
  readonly universe: number;
}

export function isPortAddress(value: number): value is PortAddress {
  return Number.isInteger(value) && value >= 0 && value <= LAST_PORT_ADDRESS;
}

/** Net in bits 14 to 8, Sub-Net in 7 to 4, Universe in 3 to 0; throws when a part is out of its range. Source: Art-Net 4. [AD7] */
export function portAddress({ net, subNet, universe }: PortAddressParts): PortAddress {
  const fits = isPart(net, 127) && isPart(subNet, 15) && isPart(universe, 15);
  const value = net * 256 + subNet * 16 + universe;
  if (!fits || !isPortAddress(value)) throw new Error(`no such Port-Address: ${net}:${subNet}:${universe}`);
  return value;
}

export function portAddressParts(address: PortAddress): PortAddressParts {
  return { net: address >> 8, subNet: (address >> 4) & 15, universe: address & 15 };
}

/** The two bytes a packet carries: Net, and Sub-Net with Universe. Source: Art-Net 4, ArtDmx. */
export function portAddressBytes(address: PortAddress): { readonly net: number; readonly subUni: number } {
  return { net: address >> 8, subUni: address & 255 };
}

/** `0:15:15 (0x00FF)`: some print the parts decimal and some hexadecimal, so that both stand there (common practice). [AD7] */
export function formatPortAddress(address: PortAddress): string {
  const { net, subNet, universe } = portAddressParts(address);
  return `${net}:${subNet}:${universe} (0x${address.toString(16).toUpperCase().padStart(4, '0')})`;
}

/**
 * Reads a Port-Address as people write it: its three parts (`0:15:15`, decimal), all of it decimal (`255`) or hexadecimal (`0x00FF`), or as it
 * is printed; null for anything else. [AD7]
 */
export function readPortAddress(text: string): PortAddress | null {
  const [, written = ''] = /^\s*(.*?)\s*(?:\(0x[\da-f]{1,4}\)\s*)?$/is.exec(text) ?? [];
  const [, net, subNet, universe] = /^(\d{1,3})[:.](\d{1,2})[:.](\d{1,2})$/.exec(written) ?? [];
  if (net !== undefined) {
    const parts = { net: Number(net), subNet: Number(subNet), universe: Number(universe) };
    const fits = isPart(parts.net, 127) && isPart(parts.subNet, 15) && isPart(parts.universe, 15);
    return fits ? portAddress(parts) : null;
  }
  const value = /^(\d{1,5}|0x[\da-f]{1,4})$/i.test(written) ? Number(written) : -1;
  return isPortAddress(value) ? value : null;
}

const isPart = (part: number, most: number) => Number.isInteger(part) && part >= 0 && part <= most;
