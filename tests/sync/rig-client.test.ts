import { afterEach, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import { seededRng } from '#base/rng.ts';
import { createMemoryLog } from '#server/sync/memory-log.ts';
import type { UpdateLog } from '#server/sync/update-log.ts';
import { noCopy } from '#tests/support/no-copy.ts';
import { openSocket, type SyncServer, startSyncServer, userOf } from '#tests/support/sync-server.ts';
import { wsConnect } from '#tests/support/ws-connect.ts';
import type { LocalCopy } from '#ui/live/sync/local-copy.ts';
import { createRigClient, type RigClient } from '#ui/live/sync/rig-client.ts';
import type { SyncState } from '#ui/live/sync/sync-state.ts';
import { CAPS } from '#wire/caps.ts';
import type { SyncRole } from '#wire/sync/message.ts';
import { SimDevice } from './sim-copy.ts';

const roles = new Map<string, SyncRole | 'signed-out' | 'no-such-rig'>();
const cleaning: (() => Promise<void>)[] = [];
afterEach(async () => {
  roles.clear();
  for (const clean of cleaning.splice(0).reverse()) await clean();
});

const newDevice = () => new SimDevice({ hold: (_life, work) => work() });
const alive = { alive: true };

function emptyLog() {
  const log = createMemoryLog();
  log.createRig('rig');
  return log;
}

async function serve(log: UpdateLog = emptyLog()): Promise<SyncServer> {
  const server = await startSyncServer({
    log,
    authorise: async (request) => {
      const role = roles.get(userOf(request)) ?? 'writer';
      return role === 'writer' || role === 'reader' ? { user: userOf(request), name: userOf(request), role } : role;
    },
  });
  cleaning.push(() => server.stop());
  return server;
}

interface Page {
  readonly doc: Y.Doc;
  readonly client: RigClient;
  set(key: string, value: string | number): void;
  cells(): unknown;
  until(holds: (state: SyncState) => boolean): Promise<SyncState>;
}

function openPage(port: () => number, user: string, copy: LocalCopy = newDevice().copyFor(alive)): Page {
  const doc = new Y.Doc();
  const connect = wsConnect(() => openSocket(port(), 'rig', { user }));
  const client = createRigClient({ doc, connect, copy, clock: systemClock, rng: seededRng(1) });
  cleaning.push(() => client.close());
  return {
    doc,
    client,
    set: (key, value) => void doc.getMap('cells').set(key, value),
    cells: () => doc.getMap('cells').toJSON(),
    until: (holds) =>
      new Promise((resolve) => {
        const look = () => {
          const state = client.state();
          if (!holds(state)) return;
          stop();
          resolve(state);
        };
        const stop = client.subscribe(look);
        look();
      }),
  };
}

const saved = (state: SyncState) => state.link === 'live' && state.save === 'saved';

describe('client of a rig', () => {
  it('tells what it knows, from the first moment to saved', async () => {
    const server = await serve();
    const ann = openPage(() => server.port, 'ann');
    expect(ann.client.state()).toMatchObject({
      link: 'loading',
      role: undefined,
      filled: false,
      save: 'saved',
      people: [],
    });
    const live = await ann.until(saved);
    expect(live).toMatchObject({
      role: 'writer',
      filled: true,
      unsaved: 0,
      trouble: undefined,
      copyTrouble: undefined,
    });
    ann.set('a', 1);
    expect(ann.client.state()).toMatchObject({ save: 'saving', unsaved: 1 });
    expect((await ann.until(saved)).seq).toBe(1);
    expect(ann.client.state()).toBe(ann.client.state());
  });

  it('keeps what a person who lost their role has typed, says where it is, and sends it when they may again', async () => {
    const server = await serve();
    const device = newDevice();
    const ann = openPage(() => server.port, 'ann', device.copyFor(alive));
    await ann.until(saved);
    roles.set('ann', 'reader');
    await server.service.recheck({ user: 'ann' });
    await ann.until((state) => state.role === 'reader');
    ann.set('typed', 'too late');
    const state = await ann.until(({ save }) => save === 'on-this-device');
    expect(state).toMatchObject({ link: 'live', unsaved: 1 });
    await ann.client.close();
    const again = openPage(() => server.port, 'ann', device.copyFor(alive));
    expect(await again.until(({ link }) => link === 'live')).toMatchObject({ save: 'on-this-device', unsaved: 1 });
    expect(again.cells()).toEqual({ typed: 'too late' });
    roles.set('ann', 'writer');
    await server.service.recheck({ user: 'ann' });
    await again.until(saved);
    expect(await server.service.readRig('rig', (doc) => doc.getMap('cells').toJSON())).toEqual({ typed: 'too late' });
  });

  it.each([
    ['signed-out', 'signed-out'],
    ['no-such-rig', 'no-such-rig'],
  ] as const)('stops when it is %s, and keeps what was typed', async (role, trouble) => {
    const server = await serve();
    const ann = openPage(() => server.port, 'ann');
    await ann.until(saved);
    roles.set('ann', role);
    await server.service.recheck({ user: 'ann' });
    expect(await ann.until(({ link }) => link === 'stopped')).toMatchObject({ trouble, people: [] });
    ann.set('a', 1);
    expect(await ann.until(({ save }) => save === 'on-this-device')).toMatchObject({ unsaved: 1 });
    roles.set('ann', 'writer');
    ann.client.nudge();
    await ann.until(saved);
  });

  it('says that edits are nowhere but in this page when the device does not keep them', async () => {
    const server = await serve();
    const full: LocalCopy = { ...noCopy, load: newDevice().copyFor(alive).load, write: async () => refuse('full') };
    for (const [copy, copyTrouble] of [
      [noCopy, 'missing'],
      [full, 'full'],
    ] as const) {
      const ann = openPage(() => server.port, 'ann', copy);
      await ann.until(saved);
      roles.set('ann', 'no-such-rig');
      await server.service.recheck({ user: 'ann' });
      await ann.until(({ link }) => link === 'stopped');
      ann.set('a', 1);
      expect(await ann.until(({ save }) => save === 'only-in-this-page')).toMatchObject({ copyTrouble, unsaved: 1 });
      roles.set('ann', 'writer');
    }
  });

  it('brings back what the server has lost: a store put back from a backup', async () => {
    let server = await serve();
    const [ann, bob] = [openPage(() => server.port, 'ann'), openPage(() => server.port, 'bob')];
    await Promise.all([ann.until(saved), bob.until(saved)]);
    for (let nth = 0; nth < 5; nth++) ann.set(`a${nth}`, nth);
    await ann.until(saved);
    bob.set('b', 1);
    await bob.until(saved);
    await ann.until(() => ann.doc.getMap('cells').has('b'));
    const before = server;
    server = await serve(emptyLog());
    await before.stop();
    await ann.until(({ link }) => link !== 'live');
    await Promise.all([ann.until(saved), bob.until(saved)]);
    const cells = await server.service.readRig('rig', (doc) => doc.getMap('cells').toJSON());
    expect(cells).toEqual({ a0: 0, a1: 1, a2: 2, a3: 3, a4: 4, b: 1 });
  });

  it('says when one edit is larger than the server takes, and goes on once it is taken back', async () => {
    const server = await serve();
    const ann = openPage(() => server.port, 'ann');
    await ann.until(saved);
    ann.set('a', 'x'.repeat(CAPS.syncUpdate));
    expect(await ann.until(({ save }) => save === 'on-this-device')).toMatchObject({
      link: 'live',
      trouble: 'too-large',
    });
    ann.set('a', 'short');
    expect(await ann.until(saved)).toMatchObject({ trouble: undefined });
    expect(await server.service.readRig('rig', (doc) => doc.getMap('cells').toJSON())).toEqual({ a: 'short' });
  });

  it('is not cut off for a thousand edits at once', async () => {
    const server = await serve();
    const [ann, bob] = [openPage(() => server.port, 'ann'), openPage(() => server.port, 'bob')];
    await Promise.all([ann.until(saved), bob.until(saved)]);
    for (let nth = 0; nth < 3_000; nth++) ann.set(`c${nth}`, nth);
    await ann.until(saved);
    await bob.until(() => bob.doc.getMap('cells').size === 3_000);
    expect(server.service.stats().rows).toBeLessThan(20);
  });

  it('knows which client ids of this device are mine, those of earlier pages too', async () => {
    const server = await serve();
    const device = newDevice();
    const first = openPage(() => server.port, 'ann', device.copyFor(alive));
    await first.until(saved);
    first.set('a', 1);
    await first.until(saved);
    await first.client.close();
    const second = openPage(() => server.port, 'ann', device.copyFor(alive));
    await second.until(saved);
    expect(second.client.myClients()).toEqual(new Set([first.doc.clientID, second.doc.clientID]));
  });

  it('shows who is where', async () => {
    const server = await serve();
    const [ann, bob] = [openPage(() => server.port, 'ann'), openPage(() => server.port, 'bob')];
    await Promise.all([ann.until(saved), bob.until(saved)]);
    bob.client.setWhere({ fixture: 'f7', field: 'channel' });
    const where = (state: SyncState) => state.people.find(({ user }) => user === 'bob')?.where;
    expect(where(await ann.until((state) => where(state) !== null && where(state) !== undefined))).toEqual({
      fixture: 'f7',
      field: 'channel',
    });
    await bob.client.close();
    expect((await ann.until(({ people }) => people.length === 1)).people.map(({ user }) => user)).toEqual(['ann']);
  });
});
