import { zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { GDTF_LIMITS } from '#exchange/gdtf/limits.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import { forgedZip } from '#tests/support/hostile-zip.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { CAPS } from '#wire/caps.ts';
import { typeUploadPath } from '#wire/library.ts';

const NAME = 'description.xml';
const FILE = { 'content-type': 'application/octet-stream' };
const rng = seededRng(3);

/** One slot that a hundred thousand channels take: a file of 200 kB whose reading grows by the square. */
const crowded = () => {
  const channels = gdtfChannel('B', 'Dimmer', '1').repeat(100_000);
  const mode = `<DMXMode Name="M" Geometry="B"><DMXChannels>${channels}</DMXChannels></DMXMode>`;
  return gdtfFile(gdtfDescription('<Geometry Name="B"/>', mode));
};

const FILES: readonly (readonly [name: string, file: () => Uint8Array])[] = [
  ['nothing', () => new Uint8Array()],
  ['garbage', () => Uint8Array.from({ length: 100_000 }, () => rng.int(256))],
  ['a bomb that says what it is', () => zipSync({ [NAME]: new Uint8Array(50_000_000) })],
  ['a bomb that lies', () => forgedZip(NAME, new Uint8Array(50_000_000), { size: 1000 })],
  ['a path that leads out', () => zipSync({ [NAME]: new Uint8Array(9), '../../etc/x': new Uint8Array() })],
  ['endless depth', () => gdtfFile('<GDTF>'.repeat(300_000))],
  ['a crowded slot', crowded],
];

// What is in each file is refused by `src/exchange/gdtf/hostile.test.ts`; here it comes through the door.
describe('a hostile file at the door of a library', () => {
  let server: TestServer;
  let lead: Visitor;
  let path: string;
  let crewId: string;
  beforeAll(async () => {
    server = await startTestServer('embedded');
    lead = await server.person('Ada');
    crewId = (await lead.granted<{ id: string }>('crews.create', { name: 'Crew' })).id;
    path = typeUploadPath(crewId);
  });
  afterAll(() => server.stop());

  const send = (file: Uint8Array) => lead.request('POST', path, { body: Uint8Array.from(file), headers: FILE });
  const expectUnchanged = async () => {
    const types = await lead.granted<{ origin: string }[]>('library.list', { crewId });
    expect(types.filter((type) => type.origin !== 'built-in')).toEqual([]);
    expect(server.lines.filter((line) => line.includes(' trouble '))).toEqual([]);
  };

  it.each(FILES)(
    '%s is refused with a sentence, and the library stays as it is',
    async (_name, make) => {
      const { status, text } = await send(make());
      expect(status).toBe(422);
      expect(JSON.parse(text).message).toMatch(/^\S.{20,}\.$/);
      await expectUnchanged();
    },
    60_000,
  );

  it('takes no file past the cap, which is the one of whoever reads it', async () => {
    expect(CAPS.typeFile).toBe(GDTF_LIMITS.bytes);
    const { status, text } = await send(new Uint8Array(CAPS.typeFile + 1));
    expect([status, JSON.parse(text).code]).toEqual([413, 'too-large']);
    await expectUnchanged();
  }, 60_000);

  it('reads nothing of a file by somebody who may not send one', async () => {
    const stranger = await server.person('Eve');
    // A body that never comes: who waited for it would wait for minutes.
    const body = new ReadableStream({ start: (to) => to.enqueue(new Uint8Array(1000)) });
    const asked = { method: 'POST', body, headers: { ...FILE, origin: server.url, cookie: stranger.cookie } };
    const answer = await fetch(`${server.url}${path}`, { ...asked, duplex: 'half' } as RequestInit);
    expect(answer.status).toBe(404);
    await expectUnchanged();
  });
});
