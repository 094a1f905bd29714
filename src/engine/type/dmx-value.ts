import type { Resolution } from '../model/fixture-type.ts';

/** A GDTF DMXValue `value/bytes`, or `value/bytess` when `fill` is `shift`. */
export interface DmxValue {
  readonly value: number;
  readonly bytes: Resolution;
  readonly fill: 'mirror' | 'shift';
}

/** The highest value of a channel of so many bytes. */
export const highest = (bytes: Resolution): number => 256 ** bytes - 1;

/**
 * The value at another resolution. Wider: its bytes repeated from the front (`mirror`), or zeros behind (`shift`). Narrower:
 * the front bytes, which the text leaves open. Source: GDTF (DIN SPEC 15800), DMXValue.
 */
export function atResolution({ value, bytes, fill }: DmxValue, to: Resolution): number {
  if (to <= bytes) return Math.floor(value / 256 ** (bytes - to));
  let result = 0;
  for (let place = 0; place < to; place++) {
    const byte = place < bytes || fill === 'mirror' ? byteAt(value, bytes, place % bytes) : 0;
    result = result * 256 + byte;
  }
  return result;
}

const byteAt = (value: number, bytes: number, place: number) => Math.floor(value / 256 ** (bytes - 1 - place)) % 256;
