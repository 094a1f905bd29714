import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assert } from '#base/assert.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Finding } from '#engine/model/finding.ts';
import { fixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import { blockerKey } from '#wire/blocker-key.ts';
import { type RigRevisionSummary, revisionPath } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';

const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { channel: 1, position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address },
});
const mode: Edit = { kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] };
const NOTHING = { by: '', keys: [] };

describe.each(STORE_KINDS)('revisions on the %s store', (kind) => {
  let server: TestServer;
  let lead: Visitor;
  let crewId: string;
  beforeAll(async () => {
    server = await startTestServer(kind);
    lead = await server.person('Lena');
    crewId = (await lead.granted<{ id: string }>('crews.create', { name: 'Lampwrights' })).id;
  });
  afterAll(() => server.stop());

  const newRig = async (edits: readonly Edit[]): Promise<string> => {
    const { id } = await lead.granted<RigSummary>('rigs.create', { crewId, name: 'House', kind: 'house' });
    await writeEdits(server, id, lead.userId, edits);
    return id;
  };
  const freeze = (rigId: string, accepted: { by: string; keys: readonly string[] } = NOTHING) =>
    lead.call('revisions.freeze', { rigId, note: 'As hung', accepted });
  const refusalOf = (text: string): string => JSON.parse(text).error.data.refusal;
  const list = (rigId: string) => lead.granted<readonly RigRevisionSummary[]>('revisions.list', { rigId });
  const opened = async (rigId: string, number: number): Promise<{ rig: Rig; text: string }> => {
    const { text } = await lead.request('GET', revisionPath(rigId, number, 'rig'));
    const thawed = thawRig(text);
    assert(thawed.ok, text.slice(0, 200));
    return { rig: thawed.value, text };
  };

  it('freezes what is committed, hashed, and keeps it as it was', async () => {
    const rigId = await newRig([mode, unit('a', 1), unit('b', 11)]);
    const before = await rigOf(server, rigId);
    expect((await freeze(rigId)).status).toBe(200);
    await writeEdits(server, rigId, lead.userId, [{ kind: 'remove-fixture', fixture: fixtureId('b') }]);
    const [revision] = await list(rigId);
    expect(revision).toMatchObject({ number: 1, note: 'As hung', units: 2, by: 'Lena', accepted: [] });
    const { rig, text } = await opened(rigId, 1);
    expect(diffEdits(diffRigs(rig, before))).toEqual([]);
    expect(createHash('sha256').update(text, 'utf8').digest('hex')).toBe(revision?.hash);
    expect(diffRigs(rig, await rigOf(server, rigId)).fixtures).toHaveLength(1);
  });

  it('numbers without a gap, also when two freeze at once, and freezes nothing twice', async () => {
    const rigId = await newRig([mode, unit('a', 1)]);
    const answers = await Promise.all([freeze(rigId), freeze(rigId), freeze(rigId)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
    expect(answers.flatMap(({ status, text }) => (status === 200 ? [] : [refusalOf(text)]))).toEqual(
      Array(2).fill('revision-same'),
    );
    await writeEdits(server, rigId, lead.userId, [unit('b', 11)]);
    await freeze(rigId);
    expect((await list(rigId)).map(({ number }) => number)).toEqual([2, 1]);
  });

  it('takes a blocker only when a named person answers for it', async () => {
    const rigId = await newRig([mode, unit('a', 1), unit('b', 3)]);
    expect(refusalOf((await freeze(rigId)).text)).toBe('blockers-open');
    await writeEdits(server, rigId, lead.userId, [
      ...setCard('limit', 'bar 1', { position: 'Bar 1', kilograms: 200, person: 'Ona Reeve', on: '2026-11-25' }),
    ]);
    const keys = ['slots-claimed-twice 3 4 of a b', 'nothing of the kind'];
    expect(refusalOf((await freeze(rigId, { by: 'Ona Reeve', keys })).text)).toBe('blockers-open');
    // The key is that of the finding as everybody's page knows it.
    const blockers = checkRig(await rigOf(server, rigId)).filter(({ severity }) => severity === 'blocker');
    const own = blockers.map(({ key }) => blockerKey(key));
    expect(own).toHaveLength(1);
    expect(refusalOf((await freeze(rigId, { by: '', keys: own })).text)).toBe('blockers-unnamed');
    expect((await freeze(rigId, { by: 'Ona Reeve', keys: own })).status).toBe(200);
    const [revision] = await list(rigId);
    expect(revision?.accepted).toEqual([{ key: own[0], by: 'Ona Reeve' }]);
    expect(revision?.counts.blocker).toBe(1);
    const findings: readonly Finding[] = JSON.parse(
      (await lead.request('GET', revisionPath(rigId, 1, 'findings'))).text,
    );
    expect(findings.filter(({ severity }) => severity === 'blocker')).toMatchObject([{ key: blockers[0]?.key }]);
  });

  it('starts a show rig from a revision, with the same units and where it came from', async () => {
    const house = await newRig([mode, unit('a', 1), unit('b', 11)]);
    await freeze(house);
    await writeEdits(server, house, lead.userId, [unit('c', 21)]);
    const show = await lead.granted<RigSummary>('revisions.start', {
      rigId: house,
      number: 1,
      crewId,
      name: 'Show',
      kind: 'show',
    });
    const { rig, text } = await opened(house, 1);
    expect(diffEdits(diffRigs(await rigOf(server, show.id), rig))).toEqual([]);
    expect(show.startedFrom).toMatchObject({ rigId: house, rigName: 'House', number: 1, way: 'started' });
    expect((await opened(show.id, 1)).text).toBe(text);
    await writeEdits(server, show.id, lead.userId, [unit('d', 31)]);
    expect((await rigOf(server, show.id)).fixtures.size).toBe(3);
    expect((await rigOf(server, house)).fixtures.size).toBe(3);
    expect((await freeze(show.id)).status).toBe(200);
    expect((await list(show.id)).map(({ number }) => number)).toEqual([2, 1]);
  });

  it('refuses a revision that is not what its hash says', async () => {
    const rigId = await newRig([mode, unit('a', 1)]);
    await freeze(rigId);
    const { sql } = server.running.store;
    await expect(sql.query('update rig_revision set note = $2 where rig_id = $1', [rigId, 'x'])).rejects.toThrow(
      /never changes/,
    );
    await sql.query('alter table rig_revision disable trigger rig_revision_never_changes');
    await sql.query('update rig_revision set hash = repeat($2, 64) where rig_id = $1', [rigId, '0']);
    await sql.query('alter table rig_revision enable trigger rig_revision_never_changes');
    const start = { rigId, number: 1, crewId, name: 'Show', kind: 'show' };
    expect(refusalOf((await lead.call('revisions.start', start)).text)).toBe('revision-damaged');
  });

  it('writes down who froze and started what', async () => {
    const entries = await server.running.store.prisma.auditEntry.findMany({
      where: { crewId },
      orderBy: { id: 'asc' },
    });
    expect(entries.map(({ kind: what, byName }) => `${what} ${byName}`).slice(0, 3)).toEqual([
      'crew-made Lena',
      'rig-made Lena',
      'frozen Lena',
    ]);
    expect(entries.some(({ kind: what }) => what === 'rig-started')).toBe(true);
    await expect(server.running.store.sql.query(`update audit_entry set by_name = 'Somebody'`)).rejects.toThrow(
      /never changes/,
    );
  });
});
