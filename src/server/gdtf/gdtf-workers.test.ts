import { afterAll, describe, expect, it } from 'vitest';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import { CAPS } from '#wire/caps.ts';
import { createGdtfWorkers } from './gdtf-workers.ts';

const mode = `<DMXMode Name="M" Geometry="Body"><DMXChannels>${gdtfChannel('Body', 'Dimmer', '1')}</DMXChannels></DMXMode>`;
const file = () => Uint8Array.from(gdtfFile(gdtfDescription('<Geometry Name="Body"/>', mode)));

describe('createGdtfWorkers', () => {
  const clock = createFakeClock();
  const workers = createGdtfWorkers(clock);
  afterAll(() => workers.close());

  it('reads more files than it has threads, and writes what it read', async () => {
    const read = await Promise.all([1, 2, 3, 4, 5].map(() => workers.read(file(), 'x.gdtf')));
    expect(read.map((each) => each.ok && each.value.model)).toEqual(Array(5).fill('Sample'));
    const [first] = read;
    const bytes = await workers.write(first?.ok ? first.value.content : '');
    const again = await workers.read(bytes, '');
    expect(again.ok && first?.ok && again.value.hash === first.value.hash).toBe(true);
  });

  it('stops at its time, and reads the next file all the same', async () => {
    const read = workers.read(file(), '');
    clock.advance(CAPS.typeReadMs);
    expect(await read).toEqual({ ok: false, error: { code: 'type-too-large' } });
    expect((await workers.read(file(), '')).ok).toBe(true);
  });

  it('reports a bug in a thread, and goes on', async () => {
    await expect(workers.write('no content')).rejects.toThrow();
    expect((await workers.read(file(), '')).ok).toBe(true);
  });
});
