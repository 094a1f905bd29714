import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { decodeText } from './decode-text.ts';
import { LIST_LIMITS } from './limits.ts';

const LIST = 'Gerät,Kanäle\nScheinwerfer „Süd“,12\n';
const bytes = (text: string, encoding: BufferEncoding) => Buffer.from(text, encoding);

describe('decodeText', () => {
  it.each([
    ['utf-8', false, bytes(LIST, 'utf8')],
    ['utf-8', true, bytes(`\ufeff${LIST}`, 'utf8')],
    ['utf-16-le', true, bytes(`\ufeff${LIST}`, 'utf16le')],
    ['utf-16-be', true, bytes(`\ufeff${LIST}`, 'utf16le').swap16()],
    ['utf-16-le', false, bytes(LIST, 'utf16le')],
    ['utf-16-be', false, bytes(LIST, 'utf16le').swap16()],
  ])('reads %s, marked %s', (encoding, marked, list) => {
    expect(decodeText(list)).toEqual({ ok: true, value: { text: LIST, encoding, marked, cautions: [] } });
  });

  it('reads Windows-1252 as a codec from outside does (Python 3.13, cp1252; undefined bytes as control characters)', () => {
    const high =
      '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ\u00a0¡¢£¤¥¦§¨©ª«¬\u00ad®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ';
    const list = Buffer.concat([bytes('Unit,Type\n', 'latin1'), Uint8Array.from({ length: 128 }, (_, i) => 128 + i)]);
    expect(decodeText(list)).toMatchObject({
      ok: true,
      value: { text: `Unit,Type\n${high}`, encoding: 'windows-1252' },
    });
  });

  it('forgives a last character cut short, and only that', () => {
    const whole = bytes('Brücke,1\nBühne é', 'utf8');
    expect(decodeText(whole.subarray(0, -1))).toMatchObject({
      value: { text: 'Brücke,1\nBühne ', encoding: 'utf-8', cautions: ['cut-off'] },
    });
    expect(decodeText(bytes('Caf\xe9,1\nBar', 'latin1'))).toMatchObject({
      value: { text: 'Café,1\nBar', encoding: 'windows-1252' },
    });
    expect(decodeText(bytes('Bar,1\nCaf\xe9', 'latin1'))).toMatchObject({
      value: { text: 'Bar,1\nCafé', encoding: 'windows-1252' },
    });
  });

  it.each([
    ['no-text', ''],
    ['no-text', '\ufeff \r\n'],
    ['workbook', 'PK\x03\x04\x14\x00'],
    ['workbook', '\xd0\xcf\x11\xe0\xa1\xb1'],
    ['document', '%PDF-1.7\n'],
    ['document', '{\\rtf1 Unit}'],
    ['picture', '\x89PNG\r\n\x1a\n'],
    ['not-text', 'Unit\x00\x01\x02\x03,Type\x00\x04'],
  ])('refuses as %s: %j', (code, text) => {
    const list = text.startsWith('\ufeff') ? bytes(text, 'utf8') : bytes(text, 'latin1');
    expect(decodeText(list)).toEqual({ ok: false, error: { code } });
  });

  it('refuses random bytes as no text', () => {
    const rng = seededRng(3);
    const noise = Uint8Array.from({ length: 4000 }, () => rng.int(256));
    expect(decodeText(noise)).toEqual({ ok: false, error: { code: 'not-text' } });
  });

  it('refuses more than the limit, and says both', () => {
    const list = new Uint8Array(LIST_LIMITS.bytes + 1).fill(65);
    expect(decodeText(list)).toEqual({
      ok: false,
      error: { code: 'too-large', limit: LIST_LIMITS.bytes, bytes: list.length },
    });
  });
});
