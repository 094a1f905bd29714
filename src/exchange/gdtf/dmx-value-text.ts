import type { Resolution } from '#engine/model/fixture-type.ts';
import { atResolution, type DmxValue, highest } from '#engine/type/dmx-value.ts';
import type { Notes } from './notes.ts';
import type { XmlElement } from './read-xml.ts';

/** A value as it is written; without bytes, as some old files have it, `bytes` is null. */
type WrittenValue = Omit<DmxValue, 'bytes'> & { readonly bytes: number | null };

/** `255/1`, `128/1s`. Null when it is none. */
export function parseDmxValue(text: string): WrittenValue | null {
  const known = parsed.get(text);
  if (known !== undefined) return known;
  const value = parse(text);
  if (parsed.size >= REMEMBERED) parsed.clear();
  parsed.set(text, value);
  return value;
}

// A file writes the same few values thousands of times. This only saves work, and is emptied when it fills up.
const REMEMBERED = 4096;
const parsed = new Map<string, WrittenValue | null>();

function parse(text: string): WrittenValue | null {
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
  const value = parseDmxValue(text);
  if (value === null) {
    if (/^\s*(none\s*)?$/i.test(text)) return null;
    notes.defect('value', element, `${name}="${text}"`);
    return null;
  }
  const written = value.bytes ?? to;
  const bytes = asResolution(written);
  const held = written > 4 ? Math.floor(value.value / 256 ** (written - 4)) : value.value;
  if (held > highest(bytes)) notes.defect('value-too-high', element, `${name}="${text}"`);
  return atResolution({ value: Math.min(held, highest(bytes)), bytes, fill: value.fill }, to);
}

export const spellDmxValue = (value: number, bytes: Resolution): string => `${value}/${bytes}`;
