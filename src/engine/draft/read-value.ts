import type { Resolution } from '../model/fixture-type.ts';
import { atResolution, highest } from '../type/dmx-value.ts';

/**
 * A value of a whole channel as people type it: `200`, `255/1` in steps of so many bytes (`255/1s` filled with zeros; GDTF,
 * DMXValue), `50%`. Null for an empty text.
 */
export function readValue(text: string, resolution: Resolution): number | null | 'unreadable-value' | 'value-too-high' {
  const typed = text.trim();
  if (typed === '') return null;
  const [, number, percent, bytes, shift] = /^(\d{1,10})\s*(?:(%)|\/\s*([1-4])(s?))?$/.exec(typed) ?? [];
  if (number === undefined) return 'unreadable-value';
  const value = Number(number);
  if (percent !== undefined) return value > 100 ? 'value-too-high' : Math.round((value / 100) * highest(resolution));
  const own = bytes === undefined ? resolution : (Number(bytes) as Resolution);
  if (value > highest(own)) return 'value-too-high';
  return atResolution({ value, bytes: own, fill: shift === 's' ? 'shift' : 'mirror' }, resolution);
}
