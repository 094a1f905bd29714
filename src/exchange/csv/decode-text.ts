import { ok, type Result, refuse } from '#base/result.ts';
import type { DecodedText, DecodeRefusal, TextEncoding } from '#engine/list/grid.ts';
import { LIST_LIMITS } from './limits.ts';
import { decodeWindows1252 } from './windows-1252.ts';

/**
 * The text of a file of unknown encoding: a byte order mark decides, else UTF-16 by its zero bytes, else UTF-8 when it is
 * valid, else Windows-1252. Files that are no text are refused with what they seem to be.
 */
export function decodeText(bytes: Uint8Array): Result<DecodedText, DecodeRefusal> {
  if (bytes.length === 0) return refuse({ code: 'no-text' });
  if (bytes.length > LIST_LIMITS.bytes) {
    return refuse({ code: 'too-large', limit: LIST_LIMITS.bytes, bytes: bytes.length });
  }
  const other = otherKind(bytes);
  if (other !== undefined) return refuse({ code: other });
  const decoded = decode(bytes);
  if (looksBinary(decoded.text)) return refuse({ code: 'not-text' });
  return decoded.text.trim() === '' ? refuse({ code: 'no-text' }) : ok(decoded);
}

// First bytes of the kinds of file that people pick by mistake. Source: the formats' own signatures (ZIP 4.3.7, [MS-CFB]
// 2.2, ISO 32000-1 7.5.2, PNG 5.2, JPEG SOI, GIF).
const SIGNATURES: readonly (readonly [DecodeRefusal['code'] & ('workbook' | 'document' | 'picture'), string])[] = [
  ['workbook', 'PK\x03\x04'],
  ['workbook', '\xd0\xcf\x11\xe0'],
  ['document', '%PDF-'],
  ['document', '{\\rtf'],
  ['picture', '\x89PNG'],
  ['picture', '\xff\xd8\xff'],
  ['picture', 'GIF8'],
];

function otherKind(bytes: Uint8Array) {
  const head = String.fromCharCode(...bytes.subarray(0, 8));
  return SIGNATURES.find(([, signature]) => head.startsWith(signature))?.[0];
}

function decode(bytes: Uint8Array): DecodedText {
  if (startsWith(bytes, 0xef, 0xbb, 0xbf)) return decodeLoosely(bytes.subarray(3), 'utf-8');
  if (startsWith(bytes, 0xff, 0xfe)) return decodeLoosely(bytes.subarray(2), 'utf-16-le');
  if (startsWith(bytes, 0xfe, 0xff)) return decodeLoosely(bytes.subarray(2), 'utf-16-be');
  const wide = wideEncoding(bytes);
  if (wide !== undefined) return { ...decodeLoosely(bytes, wide), marked: false };
  return decodeUtf8(bytes) ?? unmarked(decodeWindows1252(bytes), 'windows-1252', []);
}

const startsWith = (bytes: Uint8Array, ...head: number[]) => head.every((byte, index) => bytes[index] === byte);

const unmarked = (text: string, encoding: TextEncoding, cautions: DecodedText['cautions']): DecodedText => ({
  text,
  encoding,
  marked: false,
  cautions,
});

const LABELS = { 'utf-8': 'utf-8', 'utf-16-le': 'utf-16le', 'utf-16-be': 'utf-16be' } as const;

function decodeLoosely(bytes: Uint8Array, encoding: keyof typeof LABELS): DecodedText {
  const text = new TextDecoder(LABELS[encoding], { ignoreBOM: true }).decode(bytes);
  const replaced = text.indexOf('\ufffd');
  const cautions = replaced < 0 ? [] : [replaced === text.length - 1 ? ('cut-off' as const) : ('replaced' as const)];
  return { text, encoding, marked: true, cautions };
}

/** UTF-8 without a mark; a last character cut short is forgiven, any other fault means that it is not UTF-8. */
function decodeUtf8(bytes: Uint8Array): DecodedText | undefined {
  const whole = strictUtf8(bytes);
  if (whole !== undefined) return unmarked(whole, 'utf-8', []);
  if (bytes.every((byte, index) => byte < 0x80 || index >= bytes.length - 3)) return undefined;
  for (let cut = 1; cut <= 3; cut++) {
    const lead = bytes[bytes.length - cut] ?? 0;
    if (lead < 0xc2) continue;
    const rest = strictUtf8(bytes.subarray(0, bytes.length - cut));
    return rest === undefined ? undefined : unmarked(rest, 'utf-8', ['cut-off']);
  }
  return undefined;
}

function strictUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    // `fatal` reports invalid bytes by this error and no other.
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}

/** UTF-16 without a mark shows by zero bytes in every other place: list text is mostly below U+0100. */
function wideEncoding(bytes: Uint8Array): 'utf-16-le' | 'utf-16-be' | undefined {
  const sample = bytes.subarray(0, 4096);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < sample.length; i++) if (sample[i] === 0) i % 2 === 0 ? even++ : odd++;
  const enough = sample.length * 0.15;
  if (odd > enough && even < odd / 10) return 'utf-16-le';
  return even > enough && odd < even / 10 ? 'utf-16-be' : undefined;
}

/** More than one character in fifty that no text has: control characters other than line ends and tabs. */
function looksBinary(text: string): boolean {
  const sample = text.slice(0, 65_536);
  // biome keeps control characters out of patterns, so they are counted.
  let odd = 0;
  for (let i = 0; i < sample.length; i++) {
    const code = sample.charCodeAt(i);
    if (code < 32 && code !== 9 && code !== 10 && code !== 12 && code !== 13) odd++;
  }
  return odd > sample.length / 50;
}
