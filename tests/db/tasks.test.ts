import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { systemClock } from '#base/clock.ts';
import { ok } from '#base/result.ts';
import { rowsOf } from '#base/table.ts';
import { DEMO_RIG } from '#demo/demo-rig.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Rig } from '#engine/model/rig.ts';
import { pinnedMode } from '#engine/type/pin.ts';
import { slotsOf } from '#engine/type/slots-of.ts';
import type { Store } from '#server/db/store.ts';
import { createRecordWorkers } from '#server/record/record-workers.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { readRevision } from '#server/tasks/library/read-type.ts';
import { typeSummaries } from '#server/tasks/library/type-summaries.ts';
import { type SeedOptions, seedDemo } from '#server/tasks/seed-demo.ts';
import { sweepExpired } from '#server/tasks/sweep-expired.ts';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { STORE_KINDS, type TestStores, testStores } from '#tests/support/store.ts';

const DAY = 24 * 60 * 60 * 1000;

describe.each(STORE_KINDS)('tasks on the %s store', (kind) => {
  let stores: TestStores;
  const record = createRecordWorkers(systemClock);
  beforeAll(async () => {
    stores = await testStores(kind);
  });
  afterAll(() => {
    record.close();
    return stores.close();
  });

  /** Everything in the log so far, and how a write is taken: as the sync service would. */
  const writerOn = (store: Store) => async (rigId: string, author: string, bytes: Uint8Array) => {
    const { head } = await store.prisma.rig.update({ where: { id: rigId }, data: { head: { increment: 1 } } });
    await store.prisma.rigUpdate.create({
      data: { rigId, seq: head, author, at: new Date(), bytes: Uint8Array.from(bytes) },
    });
    return ok(Number(head));
  };

  const seedOn = (store: Store) => (applyUpdate: SeedOptions['applyUpdate']) =>
    seedDemo({ store, clock: createFakeClock(), record, readRigRows: createSqlLog(store.sql).read, applyUpdate });

  const readSeeded = async (store: Store): Promise<Rig> => {
    const doc = new Y.Doc();
    for (const { bytes } of await store.prisma.rigUpdate.findMany({
      where: { rigId: DEMO_RIG.id },
      orderBy: { seq: 'asc' },
    }))
      Y.applyUpdate(doc, bytes);
    return readRig(doc);
  };

  it('seeds the demo once, and finishes what was cut off without writing anything twice', async () => {
    const store = await stores.open();
    const seed = seedOn(store);
    const write = writerOn(store);
    const cutOff = async () => {
      throw new Error('cut off');
    };
    await expect(seed(cutOff)).rejects.toThrow('cut off');
    // As if it had been cut off among the types.
    await store.prisma.fixtureType.delete({ where: { id: 'demo-lodestone' } });
    expect(await seed(write)).toBe('seeded');
    // As if it had been cut off after the write, before it was noted.
    await store.prisma.setting.deleteMany({ where: { key: 'demo-seeded' } });
    expect(await seed(write)).toBe('seeded');
    expect(await seed(cutOff)).toBe('there already');

    const revisions = await store.prisma.rigRevision.findMany({ orderBy: { rigId: 'asc' } });
    expect(revisions.map(({ rigId, number }) => `${rigId} ${number}`)).toEqual([
      'demo-lantern-tide 1',
      'demo-millrace-house 1',
    ]);
    expect(revisions[0]?.hash).toBe(revisions[1]?.hash);

    const rig = await readSeeded(store);
    expect([...rowsOf(rig.fixtures)]).toHaveLength(152);
    expect(new Set(checkRig(rig).map((finding) => finding.severity))).toEqual(new Set(['blocker', 'caution', 'note']));
    expect(await store.prisma.membership.count()).toBe(4);
    const types = await typeSummaries(store, { crewId: 'demo-touring' });
    expect(types.map(({ id, revision }) => `${id} ${revision}`)).toEqual([
      'demo-fogbank 1',
      'demo-fresnel 1',
      'demo-scroller 1',
      'demo-lodestone 1',
      'demo-tideline 1',
      'demo-halyard 2',
      'demo-breakwater 1',
      'demo-pilot 1',
    ]);
  });

  it('seeds a demo whose every slot says what it does, as the library it was copied from says it', async () => {
    const store = await stores.open();
    await seedOn(store)(writerOn(store));
    const rig = await readSeeded(store);
    for (const fixture of rowsOf(rig.fixtures)) {
      const mode = modeOf(rig, fixture);
      const own = mode?.pin && pinnedMode(mode.pin);
      if (!mode?.pin || !own) throw new Error(`${fixture.id} has no chart`);
      const { breaks } = slotsOf(mode.pin.type, own);
      expect(breaks.map((each) => each.slots.length)).toEqual(mode.footprints);
      const slots = breaks.flatMap((each) => each.slots);
      expect(slots.filter(({ uses }) => uses.length !== 1 || uses[0]?.attribute === '')).toEqual([]);
    }
    for (const { type, mode, pin } of rowsOf(rig.modes)) {
      if (!pin) throw new Error(`${type}, ${mode} is no copy`);
      const { typeId, number, hash } = pin;
      const revision = await readRevision(store, { crewId: 'demo-touring', typeId, number });
      expect(revision?.hash, `${type}, ${mode}`).toBe(hash);
      expect(`${revision?.type.maker} ${revision?.type.model}`).toBe(type);
      expect(revision?.type.modes).toContainEqual(pin.type.modes[0]);
    }
  });

  it('sweeps out what has expired, and a person whose sign-up was cut off, and nobody else', async () => {
    const store = await stores.open();
    const { prisma } = store;
    const clock = createFakeClock(Date.now());
    const at = (days: number) => new Date(clock.now() + days * DAY);
    const person = (id: string, createdAt: Date) => ({ id, name: id, email: `${id}@crew.example`, createdAt });
    await prisma.user.createMany({
      data: [person('cut', at(-1)), person('new', at(0)), person('whole', at(-9)), person('demo', at(-9))],
    });
    await prisma.account.create({ data: { id: 'a', accountId: 'whole', providerId: 'credential', userId: 'whole' } });
    await prisma.crew.create({
      data: { id: 'c', name: 'C', memberships: { create: { userId: 'demo', role: 'lead' } } },
    });
    await prisma.session.createMany({
      data: [
        { id: 'over', token: 'over', userId: 'whole', expiresAt: at(-1) },
        { id: 'open', token: 'open', userId: 'whole', expiresAt: at(1) },
      ],
    });
    const invitation = { crewId: 'c', role: 'reader', createdBy: 'whole' } as const;
    await prisma.invitation.createMany({
      data: [
        { ...invitation, id: 'old', tokenHash: 'old', expiresAt: at(-31) },
        { ...invitation, id: 'recent', tokenHash: 'recent', expiresAt: at(-29) },
      ],
    });
    await sweepExpired({ store, clock });
    const left = async (rows: Promise<{ id: string }[]>) => (await rows).map(({ id }) => id).sort();
    expect(await left(prisma.user.findMany())).toEqual(['demo', 'new', 'whole']);
    expect(await left(prisma.session.findMany())).toEqual(['open']);
    expect(await left(prisma.invitation.findMany())).toEqual(['recent']);
  });
});
