import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import type { ArchiveLimits } from '#exchange/archive/archive.ts';
import { writeZip } from '#exchange/archive/write-zip.ts';
import { forgedZip, twinZip } from '#tests/support/hostile-zip.ts';
import { unpack } from './unpack.ts';

const LIMITS: ArchiveLimits = { bytes: 100_000, entries: 10, entryBytes: 20_000, totalBytes: 30_000, nesting: 1 };
const everything = { limits: LIMITS, nesting: 0, wants: () => true };
const text = (length: number) => new TextEncoder().encode('ab'.repeat(length / 2));

const codeOf = async (bytes: Uint8Array, unpacking = everything) => {
  const unpacked = await unpack(bytes, unpacking);
  return unpacked.ok ? 'ok' : unpacked.error.code;
};

describe('unpack', () => {
  it('gives back what was zipped, stored or deflated, and names what was not asked for', async () => {
    const rng = seededRng(12);
    for (let round = 0; round < 200; round++) {
      const files = Object.fromEntries(
        Array.from({ length: 1 + rng.int(6) }, (_, at) => {
          const content = Uint8Array.from({ length: rng.int(3000) }, () => rng.int(round % 2 === 0 ? 3 : 256));
          return [`${at}/ä.xml`, content] as const;
        }),
      );
      const zip = rng.int(2) === 0 ? writeZip(files) : zipSync(files, { level: 0 });
      const unpacked = await unpack(zip, { ...everything, wants: (name) => name !== '0/ä.xml' });
      if (!unpacked.ok) throw new Error(JSON.stringify(unpacked.error));
      expect(unpacked.value.others).toEqual(['0/ä.xml']);
      const back = Object.fromEntries([...unpacked.value.files].map(([name, file]) => [name, new Uint8Array(file)]));
      expect({ ...back, '0/ä.xml': files['0/ä.xml'] }).toEqual(files);
    }
  });

  it('refuses each kind of bad archive by its own code', async () => {
    const entry = text(1000);
    expect(await codeOf(new Uint8Array())).toBe('archive-empty');
    expect(await codeOf(zipSync({}))).toBe('archive-empty');
    expect(await codeOf(entry)).toBe('not-an-archive');
    expect(await codeOf(zipSync({ a: entry }).subarray(0, 60))).toBe('archive-truncated');
    expect(await codeOf(text(100_002))).toBe('archive-too-large');
    expect(await codeOf(zipSync(Object.fromEntries(Array.from({ length: 11 }, (_, at) => [`${at}`, entry]))))).toBe(
      'too-many-entries',
    );
    expect(await codeOf(zipSync({ '../../etc/x': entry }))).toBe('path-outside');
    expect(await codeOf(zipSync({ '..\\x': entry }))).toBe('path-outside');
    expect(await codeOf(zipSync({ '/etc/x': entry }))).toBe('path-outside');
    expect(await codeOf(twinZip('ab', entry))).toBe('named-twice');
    expect(await codeOf(forgedZip('a', entry, { flags: 1 }))).toBe('encrypted');
    expect(await codeOf(forgedZip('a', entry, { crc: 1 }))).toBe('archive-damaged');
    expect(await codeOf(zipSync({ a: entry }), { ...everything, nesting: 2 })).toBe('archive-nested');
    expect(await unpack(forgedZip('a', entry, { method: 12 }), everything)).toEqual({
      ok: false,
      error: { code: 'compression-method', entry: 'a', method: 'bzip2' },
    });
  });

  it('counts the bytes that come out, whatever the headers say', async () => {
    expect(await codeOf(zipSync({ a: text(20_002) }))).toBe('entry-too-large');
    expect(await codeOf(zipSync({ a: text(18_000), b: text(18_000) }))).toBe('total-too-large');
    expect(await codeOf(forgedZip('a', text(1_000_000), { size: 1000 }))).toBe('size-untrue');
    expect(await codeOf(forgedZip('a', text(1000), { size: 1001 }))).toBe('size-untrue');
  });

  it('does not unpack what nobody asked for', async () => {
    expect(await codeOf(zipSync({ a: text(1_000_000) }), { ...everything, wants: () => false })).toBe('ok');
  });

  it('never throws, whatever bytes are changed or cut off', async () => {
    const rng = seededRng(99);
    const sound = zipSync({ a: text(600), 'b/c.xml': text(400) });
    for (let round = 0; round < 3000; round++) {
      const bytes = sound.slice(0, rng.int(4) === 0 ? rng.int(sound.length) : sound.length);
      for (let change = rng.int(6); change > 0 && bytes.length > 0; change--)
        bytes[rng.int(bytes.length)] = rng.int(256);
      expect(await codeOf(bytes)).toMatch(/^[a-z-]+$/);
    }
  });
});
