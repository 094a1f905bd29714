import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { assert, present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { unpack } from '#server/archive/unpack.ts';
import { sha256 } from '#server/tasks/library/sha256.ts';
import { handoverAbout } from '#tests/support/handover-about.ts';
import { forgedZip } from '#tests/support/hostile-zip.ts';
import { handoverFileName } from './file-name.ts';
import { HANDOVER_FORMAT, PARTS } from './manifest.ts';
import { readHandover } from './read-handover.ts';
import { writeHandover } from './write-handover.ts';

const TEXTS = { rig: '{"a":"ä\\u0000"}', findings: '[]', patch: 'unit\r\n1\r\n', readMe: 'Read me.\n' };
const about = handoverAbout(TEXTS.rig);
const read = (bytes: Uint8Array) => readHandover(Uint8Array.from(bytes), { unpack, sha256 });
const written = async () => present(await writeHandover(about, TEXTS, sha256), 'a small handover');
const codeOf = async (bytes: Uint8Array) => {
  const outcome = await read(bytes);
  return outcome.ok ? 'ok' : [outcome.error.code, 'part' in outcome.error ? outcome.error.part : ''].join(' ').trim();
};
const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);
const bytesOf = (said: string) => new TextEncoder().encode(said);

/** The same archive with its manifest changed, and everything that stands on it made right again. */
async function resealed(change: (manifest: Record<string, unknown>) => void): Promise<Uint8Array> {
  const files = unzipSync(await written());
  const manifest = JSON.parse(text(files[PARTS.manifest]));
  change(manifest);
  const said = JSON.stringify(manifest);
  return zipSync({ ...files, [PARTS.manifest]: bytesOf(said), [PARTS.seal]: bytesOf(`${await sha256(said)}\n`) });
}

describe('a handover file', () => {
  it('[HO1] is the same bytes for the same handover, and holds what it says of itself', async () => {
    const bytes = await written();
    expect(await written()).toEqual(bytes);
    const files = unzipSync(bytes);
    expect(Object.keys(files)).toEqual(Object.values(PARTS));
    expect(text(files[PARTS.rig])).toBe(TEXTS.rig);
    const manifest = JSON.parse(text(files[PARTS.manifest]));
    expect(manifest).toMatchObject({ format: HANDOVER_FORMAT, ...about });
    for (const [part, said] of Object.entries<{ bytes: number; sha256: string }>(manifest.parts)) {
      expect(said).toEqual({ bytes: files[part]?.length, sha256: await sha256(text(files[part])) });
    }
    expect(text(files[PARTS.seal])).toBe(`${await sha256(text(files[PARTS.manifest]))}\n`);
  });

  it('[HO2] is read as it was written', async () => {
    expect(await read(await written())).toEqual({ ok: true, value: { about, rig: TEXTS.rig } });
  });

  it('[HO3] is refused by the name of the part when any byte of any part is another', async () => {
    const files = unzipSync(await written());
    for (const [part, content] of Object.entries(files)) {
      // The seal is that of the manifest: when they do not agree, nobody knows which of them was changed.
      const blamed = part === PARTS.seal ? PARTS.manifest : part;
      for (let at = 0; at < content.length; at++) {
        const changed = content.slice();
        changed[at] = (changed[at] ?? 0) ^ (1 << (at % 8));
        const code = await codeOf(zipSync({ ...files, [part]: changed }, { level: 0 }));
        expect(code, `${part} at ${at}`).toBe(`part-changed ${blamed}`);
      }
      const { [part]: _gone, ...rest } = files;
      expect(await codeOf(zipSync(rest))).toBe(part === PARTS.manifest ? 'not-a-handover' : `part-missing ${part}`);
      expect(await codeOf(zipSync({ ...files, [part]: content.slice(0, -1) }))).toBe(`part-changed ${blamed}`);
      expect(await codeOf(zipSync({ ...files, [part]: Uint8Array.of(0xef, 0xbb, 0xbf, ...content) }))).toBe(
        `part-changed ${blamed}`,
      );
    }
  });

  it('[HO3] reads the same or nothing when any byte of the archive is another, or its end is missing', async () => {
    const bytes = await written();
    const whole = await read(bytes);
    const rng = seededRng(7);
    for (let at = 0; at < bytes.length; at++) {
      const changed = bytes.slice();
      changed[at] = (changed[at] ?? 0) ^ (1 + rng.int(255));
      const outcome = await read(changed);
      if (outcome.ok) expect(outcome, `byte ${at}`).toEqual(whole);
      expect((await read(bytes.slice(0, at))).ok, `cut at ${at}`).toBe(false);
    }
  });

  it('[HO3] says what is wrong with what is no handover', async () => {
    const files = unzipSync(await written());
    expect(await codeOf(new Uint8Array())).toBe('archive-empty');
    expect(await codeOf(bytesOf('no archive at all'))).toBe('not-an-archive');
    expect(await codeOf(zipSync({ 'letter.txt': bytesOf('Hello') }))).toBe('not-a-handover');
    expect(await codeOf(zipSync({ ...files, '../../etc/x': bytesOf('x') }))).toBe('path-outside');
    expect(await codeOf(zipSync({ ...files, [PARTS.rig]: new Uint8Array(110_000_000) }))).toBe('entry-too-large');
    expect(await codeOf(forgedZip(PARTS.rig, new Uint8Array(1_000_000), { size: 1000 }))).toBe('size-untrue');
    expect(await codeOf(await resealed((manifest) => Object.assign(manifest, { format: 2 })))).toBe('newer-format');
    for (const change of [
      { format: 'one' },
      { rig: { id: '../x', name: 'x', kind: 'show', venueName: null } },
      { writtenAt: 'yesterday' },
      { parts: [] },
      { words: 'w'.repeat(2001) },
      { revision: { ...about.revision, number: 0 } },
    ])
      expect(await codeOf(await resealed((manifest) => Object.assign(manifest, change)))).toBe('not-a-handover');
    // A whole file of another rig than the one it names.
    const hash = await sha256('another');
    const other = { revision: { ...about.revision, hash } };
    expect(await codeOf(await resealed((manifest) => Object.assign(manifest, other)))).toBe('part-changed rig.json');
    expect(await codeOf(await resealed(() => undefined))).toBe('ok');
  });

  it('[HO2] passes over what it does not know', async () => {
    const more = await resealed((manifest) => Object.assign(manifest, { mood: 'good' }));
    const files = unzipSync(more);
    const outcome = await read(zipSync({ ...files, 'photo.png': new Uint8Array(9) }));
    assert(outcome.ok, JSON.stringify(outcome));
    expect(outcome.value).toEqual({ about, rig: TEXTS.rig });
  });

  it.each([
    ['Winter show', 'Winter show-r3.handover.zip'],
    ['../Große  Bühne: 1/2', 'Große Bühne 1 2-r3.handover.zip'],
    ['///', 'rig-r3.handover.zip'],
  ])('is called after the rig %j', (name, file) => {
    expect(handoverFileName(name, 3)).toBe(file);
  });
});
