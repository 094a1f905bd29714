import type { Brand } from '#base/brand.ts';

/** An IPv4 address, or a mask, as a number of 32 bits. */
export type Ipv4 = Brand<number, 'Ipv4'>;

/** Four numbers of 0 to 255, nothing before or behind; a leading zero is refused, for some read it as octal. Source: RFC 6943. [AD13] */
export function parseIpv4(text: string): Ipv4 | null {
  const parts = text.trim().split('.');
  if (parts.length !== 4 || !parts.every((part) => /^(0|[1-9]\d{0,2})$/.test(part) && Number(part) <= 255)) return null;
  return parts.reduce((value, part) => value * 256 + Number(part), 0) as Ipv4;
}

export function formatIpv4(address: Ipv4): string {
  return [24, 16, 8, 0].map((shift) => (address >>> shift) & 255).join('.');
}

/** A mask in dots, or the number of its leading ones behind a slash: `255.0.0.0`, `/8`. Ones, then zeros. Source: RFC 4632. [AD13] */
export function parseMask(text: string): Ipv4 | null {
  const length = /^\s*\/?(\d{1,2})\s*$/.exec(text)?.[1];
  if (length !== undefined) return Number(length) <= 32 ? maskOfLength(Number(length)) : null;
  const mask = parseIpv4(text);
  return mask !== null && maskOfLength(maskLength(mask)) === mask ? mask : null;
}

const maskOfLength = (ones: number) => (2 ** 32 - 2 ** (32 - ones)) as Ipv4;

/** How many leading ones a mask has. */
export const maskLength = (mask: Ipv4): number => Math.clz32(~mask);

/** The part of an address that its mask covers. */
const networkOf = (address: Ipv4, mask: Ipv4) => (address & mask) >>> 0;

/** Whether who has `mine` and `mask` takes the other for a neighbour, and sends to it without a router. Source: RFC 1122, 3.3.1.1. [AD13] */
export function isNeighbour(mine: Ipv4, mask: Ipv4, other: Ipv4): boolean {
  return networkOf(mine, mask) === networkOf(other, mask);
}
