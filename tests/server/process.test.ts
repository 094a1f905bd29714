import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { type SpawnedServer, spawnServer } from '#tests/support/spawn-server.ts';
import { seedDataFolder, temporaryFolder } from '#tests/support/store.ts';
import { HELLO, probeSync, someUpdate } from '#tests/support/sync-probe.ts';
import { newVisitor, type Visitor } from '#tests/support/visitor.ts';
import { CLOSE } from '#wire/sync/close-code.ts';

const cleanUps: (() => void)[] = [];
afterEach(() => {
  for (const cleanUp of cleanUps.splice(0).reverse()) cleanUp();
});

async function newFolder(): Promise<string> {
  const { folder, remove } = temporaryFolder();
  cleanUps.push(remove);
  await seedDataFolder(folder);
  return folder;
}

function spawned(env: Readonly<Record<string, string>>): SpawnedServer {
  const server = spawnServer(env);
  cleanUps.push(server.kill);
  return server;
}

const addressOf = async (server: SpawnedServer) =>
  present(await server.address, `the server did not start: ${server.lines.join('\n')}`);

async function enterDemo(address: string, as: 'designer' | 'technician'): Promise<Visitor> {
  const visitor = newVisitor(address);
  expect((await visitor.request('POST', '/api/demo/enter', { body: { as } })).status).toBe(200);
  return visitor;
}

describe('the server as a process', () => {
  it('seeds the demo once, drains on SIGTERM with exit code 0, and has every acknowledged edit afterwards', async () => {
    const DATA_DIR = await newFolder();
    const first = spawned({ DATA_DIR });
    const designer = await enterDemo(await addressOf(first), 'designer');
    const [rig] = await designer.granted<{ id: string; name: string }[]>('rigs.list');
    const rigId = present(rig, 'the demo has no rig').id;
    const before = await designer.request('GET', `/api/rigs/${rigId}/sheets/patch.csv`);
    expect(before.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(before.text.split('\r\n').length).toBeGreaterThan(150);
    await designer.granted('rigs.rename', { rigId, name: 'Renamed by a visitor' });
    const probe = probeSync(designer.socket(rigId));
    probe.send(HELLO);
    const welcome = present(await probe.hear('welcome'), 'no welcome');
    probe.send({ kind: 'update', counter: 1, bytes: someUpdate() });
    const ack = present(await probe.hear('ack'), 'no ack');
    expect(ack.seq).toBe(welcome.seq + 1);

    first.child.kill('SIGTERM');
    expect(await probe.fate).toMatchObject({ kind: 'closed', code: CLOSE.restarting });
    expect(await first.exit).toBe(0);
    expect(first.lines.at(-1)).toMatch(/ note stopped$/);

    const second = spawned({ DATA_DIR });
    const address = await addressOf(second);
    // The session of before is still good, and the demo was not put back over what a visitor did.
    const again = newVisitor(address);
    const answer = await again.request('GET', '/api/trpc/rigs.list', { headers: { cookie: designer.cookie } });
    expect(JSON.parse(answer.text).result.data).toContainEqual(
      expect.objectContaining({ id: rigId, name: 'Renamed by a visitor' }),
    );
    const technician = await enterDemo(address, 'technician');
    const later = probeSync(technician.socket(rigId));
    later.send(HELLO);
    expect((await later.hear('welcome'))?.seq).toBe(ack.seq);
    second.child.kill('SIGINT');
    expect(await second.exit).toBe(0);
  });

  it('says in one sentence why it cannot start, with exit code 1', async () => {
    const DATA_DIR = await newFolder();
    const holder = spawned({ DATA_DIR });
    await addressOf(holder);
    const second = spawned({ DATA_DIR });
    expect(await second.exit).toBe(1);
    expect(second.lines).toEqual([expect.stringMatching(/^The data folder .* is in use by another Rigledger/)]);

    const blocker = createServer();
    cleanUps.push(() => void blocker.close());
    await new Promise<void>((resolve) => blocker.listen(0, '127.0.0.1', resolve));
    const { port } = blocker.address() as AddressInfo;
    const third = spawned({ DATA_DIR: await newFolder(), PORT: String(port) });
    expect(await third.exit).toBe(1);
    expect(third.lines).toEqual([expect.stringContaining(`Port ${port} on 127.0.0.1 is taken`)]);

    const fourth = spawned({ PORT: 'eighty' });
    expect(await fourth.exit).toBe(1);
    expect(fourth.lines).toEqual([expect.stringMatching(/^PORT is "eighty", which does not work/)]);
  });

  it('has no demo where it is off: not its people, not its door', async () => {
    const server = spawned({ DATA_DIR: await newFolder(), DEMO: '0' });
    const visitor = newVisitor(await addressOf(server));
    expect(await visitor.granted('me.get')).toEqual({ user: null, demo: false, secure: false, store: 'embedded' });
    const body = { as: 'designer' };
    expect((await visitor.request('POST', '/api/demo/enter', { body })).status).toBe(404);
  });
});
