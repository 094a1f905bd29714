/**
 * Decodes Windows-1252. Our own table, because a runtime we support decodes 0x80 to 0x9F as Latin-1 control characters
 * under this label. Source: WHATWG Encoding Standard, index windows-1252.
 */
export function decodeWindows1252(bytes: Uint8Array): string {
  let text = '';
  for (let from = 0; from < bytes.length; from += 8192) {
    text += String.fromCharCode(...Array.from(bytes.subarray(from, from + 8192), toCode));
  }
  return text;
}

const HIGH =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

const toCode = (byte: number) => (byte >= 0x80 && byte <= 0x9f ? HIGH.charCodeAt(byte - 0x80) : byte);
