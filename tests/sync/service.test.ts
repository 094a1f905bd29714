import { afterEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { createMemoryLog } from '#server/sync/memory-log.ts';
import type { SyncServiceOptions } from '#server/sync/sync-service.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import { HELLO, probeSync, type SyncProbe, someUpdate } from '#tests/support/sync-probe.ts';
import { openSocket, type SyncServer, startSyncServer, userOf } from '#tests/support/sync-server.ts';
import { CAPS } from '#wire/caps.ts';
import { CLOSE } from '#wire/sync/close-code.ts';
import type { SyncRole } from '#wire/sync/message.ts';

const roles = new Map<string, SyncRole | 'signed-out' | 'no-such-rig'>();
const running: SyncServer[] = [];

afterEach(async () => {
  roles.clear();
  await Promise.all(running.splice(0).map((server) => server.stop()));
});

const authorise: SyncServiceOptions['authorise'] = async (request) => {
  const user = userOf(request);
  const role = roles.get(user) ?? 'writer';
  return role === 'writer' || role === 'reader' ? { user, name: `Name of ${user}`, role } : role;
};

async function serve(changed: Partial<SyncServiceOptions> = {}, log: UpdateLog = memoryLog()): Promise<SyncServer> {
  const server = await startSyncServer({ log, authorise, ...changed });
  running.push(server);
  return server;
}

function memoryLog() {
  const log = createMemoryLog();
  log.createRig('rig');
  return log;
}

const join = (server: SyncServer, user: string, rig = 'rig'): SyncProbe => {
  const probe = probeSync(openSocket(server.port, rig, { user }));
  probe.send(HELLO);
  return probe;
};
const update = (counter = 1) => ({ kind: 'update', counter, bytes: someUpdate() }) as const;
const codeOf = async (probe: SyncProbe): Promise<number> => {
  const fate = await probe.fate;
  return fate.kind === 'closed' ? fate.code : fate.status;
};
const cells = (server: SyncServer) => server.service.readRig('rig', (doc) => doc.getMap('cells').toJSON());

describe('sync service on real sockets', () => {
  it('acknowledges an edit with its number and sends it on, stamped people included', async () => {
    const server = await serve();
    const [ann, bob] = [join(server, 'ann'), join(server, 'bob')];
    const welcome = present(await bob.hear('welcome'), 'bob is welcome');
    expect(welcome.role).toBe('writer');
    await ann.hear('welcome');
    ann.send(update(7));
    expect(await ann.hear('ack')).toEqual({ kind: 'ack', counter: 7, seq: 1 });
    expect(await bob.hear('updates')).toEqual({ kind: 'updates', seq: 1, list: [someUpdateLike()] });
    ann.send({ kind: 'presence', where: { fixture: 'f1', field: 'unit' } });
    const late = present(await join(server, 'cy').hear('welcome'), 'cy is welcome');
    expect(late.people.map(({ user, name }) => [user, name])).toContainEqual(['ann', 'Name of ann']);
    expect(new Set(late.people.map((person) => person.colour)).size).toBe(3);
    expect(await cells(server)).toEqual({ 'probe/note': 'written by hand' });
  });

  it('refuses pages of other sites, and sockets that do not say where they come from, before the upgrade', async () => {
    const server = await serve();
    const from = (origin: string) => codeOf(probeSync(openSocket(server.port, 'rig', { user: 'ann', origin })));
    expect(await from('http://elsewhere.example')).toBe(403);
    expect(await from(`https://127.0.0.1.elsewhere.example:${server.port}`)).toBe(403);
    expect(await from('null')).toBe(403);
    expect(await from('')).toBe(403);
  });

  it('allows an origin it was told of', async () => {
    const server = await serve({ origins: ['https://rig.example'] });
    const probe = probeSync(openSocket(server.port, 'rig', { user: 'ann', origin: 'https://rig.example' }));
    probe.send(HELLO);
    expect(await probe.hear('welcome')).toBeDefined();
    probe.close();
  });

  it('answers a foreign rig and a missing one alike', async () => {
    const server = await serve();
    roles.set('stranger', 'no-such-rig');
    const foreign = await join(server, 'stranger').fate;
    const missing = await join(server, 'ann', 'no-rig-of-this-name').fate;
    expect(foreign).toEqual({ kind: 'closed', code: CLOSE.noSuchRig, reason: '' });
    expect(missing).toEqual(foreign);
  });

  it('closes a signed-out socket, one of another version, one that makes no sense', async () => {
    const server = await serve();
    roles.set('gone', 'signed-out');
    expect(await codeOf(join(server, 'gone'))).toBe(CLOSE.signedOut);
    const other = probeSync(openSocket(server.port, 'rig', { user: 'ann' }));
    other.send(Uint8Array.of(0, 99, 1, 2, 3));
    expect(await codeOf(other)).toBe(CLOSE.otherVersion);
    const noise = join(server, 'ann');
    await noise.hear('welcome');
    noise.send(Uint8Array.of(9, 9, 9));
    expect(await codeOf(noise)).toBe(CLOSE.malformed);
    const early = probeSync(openSocket(server.port, 'rig', { user: 'ann' }));
    early.send(update());
    expect(await codeOf(early)).toBe(CLOSE.malformed);
    const text = openSocket(server.port, 'rig', { user: 'ann' });
    text.on('open', () => text.send('words'));
    expect(await codeOf(probeSync(text))).toBe(CLOSE.malformed);
  });

  it('takes nothing from a reader, and nothing that is no document update', async () => {
    const server = await serve();
    roles.set('reader', 'reader');
    const reader = join(server, 'reader');
    expect((await reader.hear('welcome'))?.role).toBe('reader');
    reader.send(update());
    expect(await codeOf(reader)).toBe(CLOSE.readerWrote);
    const bad = join(server, 'ann');
    await bad.hear('welcome');
    bad.send({ kind: 'update', counter: 1, bytes: Uint8Array.of(1, 2, 3, 250) });
    expect(await codeOf(bad)).toBe(CLOSE.malformed);
    expect(await cells(server)).toEqual({});
  });

  it('does not acknowledge what builds on edits it has not got: the sender comes back with all of it', async () => {
    const server = await serve();
    const ann = join(server, 'ann');
    await ann.hear('welcome');
    const doc = new Y.Doc();
    doc.getMap('cells').set('a', 1);
    const before = Y.encodeStateVector(doc);
    doc.getMap('cells').set('b', 2);
    ann.send({ kind: 'update', counter: 1, bytes: Y.encodeStateAsUpdate(doc, before) });
    expect(await codeOf(ann)).toBe(CLOSE.tryAgain);
    expect(ann.heard.some((message) => message.kind === 'ack')).toBe(false);
  });

  it('cuts off who sends too fast or too much', async () => {
    const server = await serve();
    const fast = join(server, 'ann');
    await fast.hear('welcome');
    for (let nth = 0; nth < 2 * CAPS.syncMessageBurst; nth++) fast.send({ kind: 'ping' });
    expect(await codeOf(fast)).toBe(CLOSE.tooFast);
    const large = join(server, 'bob');
    await large.hear('welcome');
    large.send(new Uint8Array(CAPS.syncFrame + 1));
    // The frame is refused by its header (RFC 6455, 7.4.1: message too big), before it is read.
    expect(await codeOf(large)).toBe(1009);
  });

  it('closes or turns sockets when rights change, also of a socket that is just being let in', async () => {
    const server = await serve();
    const [ann, bob] = [join(server, 'ann'), join(server, 'bob')];
    await Promise.all([ann.hear('welcome'), bob.hear('welcome')]);
    roles.set('ann', 'reader');
    await server.service.recheck({ user: 'ann' });
    expect(await ann.hear('role')).toEqual({ kind: 'role', role: 'reader' });
    roles.set('ann', 'no-such-rig');
    const entering = join(server, 'ann');
    await server.service.recheck({ user: 'ann' });
    expect(await codeOf(ann)).toBe(CLOSE.noSuchRig);
    expect(await codeOf(entering)).toBe(CLOSE.noSuchRig);
    bob.send(update());
    expect(await bob.hear('ack')).toBeDefined();
  });

  it('outlives no session, though nobody says that it has ended', async () => {
    const server = await serve({ recheckMs: 10 });
    const [ann, bob] = [join(server, 'ann'), join(server, 'bob')];
    await Promise.all([ann.hear('welcome'), bob.hear('welcome')]);
    roles.set('ann', 'signed-out');
    expect(await codeOf(ann)).toBe(CLOSE.signedOut);
    bob.send(update());
    expect(await bob.hear('ack')).toBeDefined();
  });

  it('acknowledges nothing while the store fails, and mends by itself', async () => {
    const log = memoryLog();
    let broken = true;
    const failing: UpdateLog = {
      ...log,
      append: (batch) => (broken ? Promise.reject(new Error('no room on the disk')) : log.append(batch)),
    };
    const server = await serve({}, failing);
    const ann = join(server, 'ann');
    await ann.hear('welcome');
    ann.send(update());
    expect(await codeOf(ann)).toBe(CLOSE.tryAgain);
    expect(ann.heard.map((message) => message.kind)).not.toContain('ack');
    expect(await cells(server)).toEqual({});
    broken = false;
    const again = join(server, 'ann');
    await again.hear('welcome');
    again.send(update());
    expect(await again.hear('ack')).toEqual({ kind: 'ack', counter: 1, seq: 1 });
  });

  it('writes what this process writes by the same path, and tells everybody', async () => {
    const server = await serve();
    const ann = join(server, 'ann');
    await ann.hear('welcome');
    expect(await server.service.applyUpdate('rig', 'system', someUpdate())).toEqual({ ok: true, value: 1 });
    expect((await ann.hear('updates'))?.seq).toBe(1);
    expect(await server.service.applyUpdate('rig', 'system', Uint8Array.of(7))).toEqual({
      ok: false,
      error: 'malformed',
    });
    expect(await server.service.applyUpdate('none', 'system', someUpdate())).toEqual({
      ok: false,
      error: 'no-such-rig',
    });
    expect(await server.service.readRig('none', () => 1)).toBeUndefined();
  });

  it('drains: what is on its way is acknowledged, then sockets close and new ones are turned away', async () => {
    const log = memoryLog();
    let store: () => void = () => undefined;
    const storing = new Promise<void>((resolve) => {
      store = resolve;
    });
    let asked: () => void = () => undefined;
    const underWay = new Promise<void>((resolve) => {
      asked = resolve;
    });
    const append: UpdateLog['append'] = async (batch) => {
      asked();
      await storing;
      return log.append(batch);
    };
    const server = await serve({}, { ...log, append });
    const ann = join(server, 'ann');
    await ann.hear('welcome');
    ann.send(update());
    await underWay;
    const drained = server.service.drain();
    expect(await codeOf(join(server, 'bob'))).toBe(503);
    store();
    await drained;
    expect(await codeOf(ann)).toBe(CLOSE.restarting);
    expect(ann.heard.map((message) => message.kind)).toContain('ack');
    expect(server.service.stats().connections).toBe(0);
  });
});

/** Any update equals one that writes the same: the client id in it is another each time. */
const someUpdateLike = (): unknown => expect.any(Uint8Array);
