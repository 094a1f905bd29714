import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freezeRig } from '#document/frozen/frozen-rig.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { hashOf } from '#server/record/record-job.ts';
import { sweepExpired } from '#server/tasks/sweep-expired.ts';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import type { AuditPage } from '#wire/audit.ts';
import { CAPS } from '#wire/caps.ts';
import type { RigRevisionSummary } from '#wire/record.ts';
import type { RemovedRig, RigSummary } from '#wire/rigs.ts';
import { CLOSE } from '#wire/sync/close-code.ts';

const DAY = 24 * 60 * 60 * 1000;
const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { channel: 1, position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address },
});

describe.each(STORE_KINDS)('removing rigs on the %s store', (kind) => {
  let server: TestServer;
  let lead: Visitor;
  let crewId: string;
  beforeAll(async () => {
    server = await startTestServer(kind);
    lead = await server.person('Lena');
    crewId = (await lead.granted<{ id: string }>('crews.create', { name: 'Lampwrights' })).id;
  });
  afterAll(() => server.stop());

  /** A rig with a log of some rows, two revisions and a checkpoint. */
  const newRig = async (name: string): Promise<string> => {
    const { id } = await lead.granted<RigSummary>('rigs.create', { crewId, name, kind: 'show' });
    await writeEdits(server, id, lead.userId, [{ kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] }]);
    for (const at of [1, 2]) {
      await writeEdits(server, id, lead.userId, [unit(`u${at}`, at * 10)]);
      await lead.granted('revisions.freeze', { rigId: id, note: '', accepted: { by: '', keys: [] } });
    }
    return id;
  };
  const removed = () => lead.granted<readonly RemovedRig[]>('rigs.removed', { crewId });
  const frozenHash = async (rigId: string) => hashOf(freezeRig(await rigOf(server, rigId)));
  const refusalOf = (text: string): string => JSON.parse(text).error.data.refusal;
  const kinds = async () =>
    (await lead.granted<AuditPage>('audit.list', { crewId })).lines.map(({ kind: what, by, what: { rig } }) =>
      `${what} ${by} ${rig}`.trim(),
    );

  /** In which tables something of a rig is kept, by every column that names rigs. The audit keeps what was done. */
  const tablesOf = async (rigId: string): Promise<readonly string[]> => {
    const { sql } = server.running.store;
    const columns = await sql.query<{ table_name: string }>(
      `select table_name from information_schema.columns where column_name = 'rig_id' and table_name <> 'audit_entry'`,
    );
    const found: string[] = [];
    for (const { table_name: table } of [...columns])
      if ((await sql.query(`select 1 from ${table} where rig_id = $1 limit 1`, [rigId])).length > 0) found.push(table);
    return found.sort();
  };

  it('takes a rig off the lists and closes it, and brings it back exactly as it was', async () => {
    const rigId = await newRig('Lantern');
    const before = await frozenHash(rigId);
    const revisions = await lead.granted<readonly RigRevisionSummary[]>('revisions.list', { rigId });
    const socket = lead.socket(rigId);
    const closed = new Promise<number>((resolve) => socket.once('close', resolve));
    await new Promise((resolve) => socket.once('open', resolve));
    await lead.granted('rigs.remove', { rigId });
    expect(await closed).toBe(CLOSE.noSuchRig);
    expect((await lead.granted<readonly RigSummary[]>('rigs.list')).map(({ id }) => id)).not.toContain(rigId);
    expect(refusalOf((await lead.call('rigs.get', { rigId })).text)).toBe('no-such-rig');
    expect(refusalOf((await lead.call('rigs.remove', { rigId })).text)).toBe('no-such-rig');
    const [gone] = await removed();
    expect(gone).toMatchObject({ id: rigId, name: 'Lantern', by: 'Lena' });
    expect(Date.parse(gone?.until ?? '') - Date.parse(gone?.at ?? '')).toBe(30 * DAY);

    await lead.granted('rigs.bringBack', { rigId });
    expect(await removed()).toEqual([]);
    expect(await frozenHash(rigId)).toBe(before);
    expect(await lead.granted('revisions.list', { rigId })).toEqual(revisions);
    await writeEdits(server, rigId, lead.userId, [unit('later', 100)]);
    expect((await rigOf(server, rigId)).fixtures.size).toBe(3);
    expect((await kinds()).slice(0, 2)).toEqual(['rig-brought-back Lena Lantern', 'rig-removed Lena Lantern']);
    expect(refusalOf((await lead.call('rigs.bringBack', { rigId })).text)).toBe('no-such-removed-rig');
  });

  it('destroys a removed rig whose name was typed, with everything that is kept of it, and nothing else', async () => {
    const [rigId, other] = [await newRig('Tide'), await newRig('Tide')];
    await server.running.store.prisma.rigCheckpoint.create({
      data: { rigId, seq: 1n, bytes: new Uint8Array([0, 0]), at: new Date() },
    });
    const kept = await tablesOf(rigId);
    expect(kept).toEqual(expect.arrayContaining(['rig_checkpoint', 'rig_revision', 'rig_update']));
    expect(refusalOf((await lead.call('rigs.destroy', { rigId, name: 'Tide' })).text)).toBe('no-such-removed-rig');
    await lead.granted('rigs.remove', { rigId });
    expect(refusalOf((await lead.call('rigs.destroy', { rigId, name: 'tide' })).text)).toBe('name-unlike');
    expect(await tablesOf(rigId)).toEqual(kept);
    const before = await frozenHash(other);
    await lead.granted('rigs.destroy', { rigId, name: 'Tide' });
    expect(await tablesOf(rigId)).toEqual([]);
    expect(await server.running.store.prisma.rig.findUnique({ where: { id: rigId } })).toBeNull();
    expect(refusalOf((await lead.call('rigs.bringBack', { rigId })).text)).toBe('no-such-removed-rig');
    expect(await frozenHash(other)).toBe(before);
    expect((await kinds())[0]).toBe('rig-destroyed Lena Tide');
  });

  it('destroys by itself what nobody brought back in 30 days, and says that nobody did it', async () => {
    const [early, late] = [await newRig('Early'), await newRig('Late')];
    const { store } = server.running;
    const now = Date.now();
    const removeAt = (id: string, at: number) =>
      store.prisma.rig.update({ where: { id }, data: { removedAt: new Date(at), removedBy: lead.userId } });
    await removeAt(early, now - 30 * DAY - 1);
    await removeAt(late, now - 30 * DAY + 60_000);
    await sweepExpired({ store, clock: createFakeClock(now) });
    expect(await tablesOf(early)).toEqual([]);
    expect((await removed()).map(({ name }) => name)).toEqual(['Late']);
    await lead.granted('rigs.bringBack', { rigId: late });
    expect((await rigOf(server, late)).fixtures.size).toBe(2);
    expect((await kinds()).slice(0, 2)).toEqual(['rig-brought-back Lena Late', 'rig-destroyed  Early']);
  });

  it('brings a rig back beside another of its name, and none past what a crew may have', async () => {
    const rigId = await newRig('Fog');
    await lead.granted('rigs.remove', { rigId });
    await newRig('Fog');
    await lead.granted('rigs.bringBack', { rigId });
    const names = (await lead.granted<readonly RigSummary[]>('rigs.list')).map(({ name }) => name);
    expect(names.filter((name) => name === 'Fog')).toHaveLength(2);
    await lead.granted('rigs.remove', { rigId });
    const { prisma } = server.running.store;
    const room = CAPS.rigsPerCrew - (await prisma.rig.count({ where: { crewId, removedAt: null } }));
    await prisma.rig.createMany({
      data: Array.from({ length: room }, (_, nth) => ({
        id: `full${nth}`,
        crewId,
        name: 'Full',
        kind: 'show' as const,
      })),
    });
    expect(refusalOf((await lead.call('rigs.bringBack', { rigId })).text)).toBe('too-many');
    await prisma.rig.deleteMany({ where: { name: 'Full' } });
    await lead.granted('rigs.bringBack', { rigId });
  });
});
