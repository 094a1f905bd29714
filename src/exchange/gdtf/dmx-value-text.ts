import type { Resolution } from '#engine/model/fixture-type.ts';
import { atResolution, type DmxValue, highest } from '#engine/type/dmx-value.ts';
import type { Notes } from './notes.ts';
import type { XmlElement } from './read-xml.ts';

/** `255/1`, `128/1s`; a value without bytes, as some old files have it, reads with `bytes` null. Null when it is none. */
export function parseDmxValue(text: string): (Omit<DmxValue, 'bytes'> & { readonly bytes: number | null }) | null {
  const found = /^\s*(\d{1,20})\s*(?:\/\s*(\d{1,2})\s*(s?))?\s*$/i.exec(text);
  if (found === null) return null;
  const [, value = '', bytes, shift = ''] = found;
  if (bytes === '0' || bytes === '00') return null;
  const fill = shift === '' ? ('mirror' as const) : ('shift' as const);
  return { value: Number(value), bytes: bytes === undefined ? null : Number(bytes), fill };
}

/** How many bytes a value is written with, 0 when it says nothing of that: what a channel without slots takes its resolution from. */
export function bytesOf(text: string | undefined): number {
  return text === undefined ? 0 : (parseDmxValue(text)?.bytes ?? 0);
}

export const asResolution = (bytes: number): Resolution => Math.max(1, Math.min(4, bytes)) as Resolution;

/** The value an attribute holds, at the channel's resolution; null when it is missing, `None`, or no value (a defect). */
export function readDmxValue(element: XmlElement, name: string, to: Resolution, notes: Notes): number | null {
  const text = element.attributes[name];
  if (text === undefined) return null;
  const parsed = parseDmxValue(text);
  if (parsed === null) {
    if (/^\s*(none\s*)?$/i.test(text)) return null;
    notes.defect('value', element, `${name}="${text}"`);
    return null;
  }
  const written = parsed.bytes ?? to;
  const bytes = asResolution(written);
  const value = written > 4 ? Math.floor(parsed.value / 256 ** (written - 4)) : parsed.value;
  if (value > highest(bytes)) notes.defect('value-too-high', element, `${name}="${text}"`);
  return atResolution({ value: Math.min(value, highest(bytes)), bytes, fill: parsed.fill }, to);
}

export const spellDmxValue = (value: number, bytes: Resolution): string => `${value}/${bytes}`;
