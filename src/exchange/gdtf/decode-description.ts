import { decodeWindows1252 } from '../csv/windows-1252.ts';
import type { Notes } from './notes.ts';

/**
 * The text of a description: UTF-8 as the standard has it, else UTF-16 by its byte order mark, else Windows-1252. What is
 * not UTF-8 is a defect. Zeros and blanks around the text are taken off: writers pad with them.
 */
export function decodeDescription(bytes: Uint8Array, notes: Notes): string {
  return trimmed(decode(bytes, notes));
}

const PADDING = /[\ufeff\0\s]/;

/** From both ends inward: a pattern for the end would be tried at every blank of megabytes. */
function trimmed(text: string): string {
  let [from, to] = [0, text.length];
  while (from < to && PADDING.test(text.charAt(from))) from += 1;
  while (to > from && PADDING.test(text.charAt(to - 1))) to -= 1;
  return text.slice(from, to);
}

function decode(bytes: Uint8Array, notes: Notes): string {
  const wide = wideLabel(bytes);
  if (wide !== undefined) {
    notes.defect('encoding', { line: 1 }, wide);
    return new TextDecoder(wide).decode(bytes);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    // `fatal` reports invalid bytes by this error and no other.
    if (!(error instanceof TypeError)) throw error;
    notes.defect('encoding', { line: 1 }, 'windows-1252');
    return decodeWindows1252(bytes);
  }
}

function wideLabel(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  return bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : undefined;
}
