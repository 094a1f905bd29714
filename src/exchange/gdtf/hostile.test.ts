import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import type { GdtfRefusal } from '#engine/type/file-refusal.ts';
import { unpack } from '#server/archive/unpack.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import { forgedZip, twinZip } from '#tests/support/hostile-zip.ts';
import { randomType } from '#tests/support/random-type.ts';
import { gdtfRefusalSentence } from '#words/gdtf.ts';
import { exportGdtf } from './export-gdtf.ts';
import { importGdtf } from './import-gdtf.ts';
import { GDTF_LIMITS } from './limits.ts';

const how = { unpack, nesting: 0 };
const NAME = 'description.xml';
const bytes = (text: string) => new TextEncoder().encode(text);

const mode = (channels: string, name = 'M') =>
  `<DMXMode Name="${name}" Geometry="B"><DMXChannels>${channels}</DMXChannels></DMXMode>`;
const sound = gdtfDescription('<Geometry Name="B"/>', mode(gdtfChannel('B', 'Dimmer', '1')));
const entities = Array.from({ length: 9 }, (_, at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(10)}">`).join('');

/** One file for each way to refuse one. */
const FILES: Readonly<Record<GdtfRefusal['code'], () => { readonly file: Uint8Array; readonly nesting?: number }>> = {
  'archive-empty': () => ({ file: new Uint8Array() }),
  'archive-too-large': () => ({ file: new Uint8Array(GDTF_LIMITS.bytes + 1) }),
  'archive-nested': () => ({ file: gdtfFile(sound), nesting: 2 }),
  'not-an-archive': () => ({ file: bytes(sound) }),
  'archive-truncated': () => ({ file: gdtfFile(sound).subarray(0, 200) }),
  'archive-damaged': () => ({ file: forgedZip(NAME, bytes(sound), { crc: 1 }) }),
  'too-many-entries': () => ({
    file: zipSync(Object.fromEntries(Array.from({ length: GDTF_LIMITS.entries + 1 }, (_, at) => [`${at}`, bytes('')]))),
  }),
  'path-outside': () => ({ file: zipSync({ [NAME]: bytes(sound), '../../etc/x': bytes('') }) }),
  'named-twice': () => ({ file: twinZip(NAME, bytes(sound)) }),
  encrypted: () => ({ file: forgedZip(NAME, bytes(sound), { flags: 1 }) }),
  'compression-method': () => ({ file: forgedZip(NAME, bytes(sound), { method: 12 }) }),
  // A bomb that says what it is, one that unpacks to two allowed halves, and one that lies.
  'entry-too-large': () => ({ file: zipSync({ [NAME]: new Uint8Array(GDTF_LIMITS.entryBytes + 1) }) }),
  'total-too-large': () => {
    const half = new Uint8Array(GDTF_LIMITS.entryBytes);
    return { file: zipSync({ [NAME]: half, [`a/${NAME}`]: half, [`b/${NAME}`]: half }) };
  },
  'size-untrue': () => ({ file: forgedZip(NAME, new Uint8Array(300_000_000), { size: 1000 }) }),
  'xml-broken': () => ({ file: gdtfFile(sound.replace('</Geometries>', '')) }),
  'xml-doctype': () => ({
    file: gdtfFile(sound.replace('<GDTF', `<!DOCTYPE GDTF [<!ENTITY e0 "x">${entities}]>\n<GDTF`)),
  }),
  'xml-too-deep': () => ({
    file: gdtfFile(gdtfDescription('<Geometry Name="B">'.repeat(100_000) + '</Geometry>'.repeat(100_000), '')),
  }),
  'xml-too-many': () => ({ file: gdtfFile(gdtfDescription('<a/>'.repeat(GDTF_LIMITS.nodes), '')) }),
  'no-description': () => ({ file: zipSync({ 'readme.txt': bytes('') }) }),
  'not-gdtf': () => ({ file: gdtfFile('<Scene/>') }),
  'no-usable-mode': () => ({
    file: gdtfFile(gdtfDescription('<Geometry Name="B"/>', mode(gdtfChannel('B', 'Dimmer', 'None')))),
  }),
};

describe('hostile and broken .gdtf files', () => {
  const sentences = new Map<string, string>();

  it.each(Object.entries(FILES))('%s is refused by its own code and sentence', async (code, make) => {
    const { file, nesting = 0 } = make();
    const imported = await importGdtf(file, { unpack, nesting });
    if (imported.ok) throw new Error('was taken');
    expect(imported.error.code).toBe(code);
    const sentence = gdtfRefusalSentence(imported.error);
    expect(sentence).toMatch(/^.{20,250}\.$/);
    expect(sentences.get(sentence)).toBe(undefined);
    sentences.set(sentence, code);
  });

  it('refuses a file whose only mode takes a slot twice, says which, and takes it beside a sound one', async () => {
    const twice = mode(gdtfChannel('B', 'Dimmer', '1') + gdtfChannel('B', 'Pan', '1,2'));
    const alone = await importGdtf(gdtfFile(gdtfDescription('<Geometry Name="B"/>', twice)), how);
    if (alone.ok) throw new Error('was taken');
    expect(gdtfRefusalSentence(alone.error)).toMatch(
      /only mode cannot be used\. .+ slot 1 of break 1 is taken by “B_Dimmer” and “B_Pan”/,
    );
    const sound = mode(gdtfChannel('B', 'Dimmer', '1'), 'N');
    const both = await importGdtf(gdtfFile(gdtfDescription('<Geometry Name="B"/>', twice + sound)), how);
    expect(both.ok && both.value.report.troubles.map(({ kind }) => kind)).toEqual(['slot-taken-twice']);
  });

  it('names the line of broken XML', async () => {
    const imported = await importGdtf(gdtfFile(sound.replace('</Geometries>', '')), how);
    expect(imported).toEqual({
      ok: false,
      error: { code: 'xml-broken', line: 7, what: 'unexpected close tag' },
    });
  });

  it('never throws, whatever is changed in the archive or in the description', async () => {
    const rng = seededRng(4);
    for (let round = 0; round < 400; round++) {
      const zip = exportGdtf(randomType(seededRng(round + 1)));
      for (let change = rng.int(5); change > 0; change--) zip[rng.int(zip.length)] = rng.int(256);
      const imported = await importGdtf(zip, how);
      if (!imported.ok) expect(gdtfRefusalSentence(imported.error)).not.toBe('');
      const signs = [...sound];
      for (let change = 1 + rng.int(8); change > 0; change--)
        signs[rng.int(signs.length)] = rng.pick(['"', '<', '9', 'x', '/', '', '-']);
      const described = await importGdtf(gdtfFile(signs.join('')), how);
      if (!described.ok) expect(gdtfRefusalSentence(described.error)).not.toBe('');
    }
  });
});
