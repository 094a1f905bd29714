import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { assert, present } from '#base/assert.ts';
import { systemClock } from '#base/clock.ts';
import { seededRng } from '#base/rng.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import type { Change } from '#engine/history/change.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { createRecordWorkers, type RecordWorkers } from '#server/record/record-workers.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { type IndexSteps, indexLog } from '#server/tasks/history/index-log.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import { toldLedger } from '#tests/support/told-ledger.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import { type HistoryPage, type HistoryPerson, momentPath, type StepPage, type ToldChange } from '#wire/history.ts';
import type { RigSummary } from '#wire/rigs.ts';

const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { channel: 1, position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address, order: address },
});
const setCell = (name: string, field: 'address' | 'purpose', value: string | number | null): Edit => ({
  kind: 'set-cell',
  fixture: fixtureId(name),
  field,
  value,
});
/** So small that every seam between two jobs and two statements is passed. */
const TINY: IndexSteps = { rows: 3, changes: 2, insert: 2 };

describe.each(STORE_KINDS)('the history of a rig on the %s store', (kind) => {
  let server: TestServer;
  let record: RecordWorkers;
  let lead: Visitor;
  let editor: Visitor;
  let crewId: string;
  beforeAll(async () => {
    server = await startTestServer(kind);
    record = createRecordWorkers(systemClock);
    lead = await server.person('Ona Reeve');
    editor = await server.person('Tam Oduya');
    crewId = (await lead.granted<{ id: string }>('crews.create', { name: 'Lampwrights' })).id;
    await server.running.store.prisma.membership.create({ data: { crewId, userId: editor.userId, role: 'editor' } });
  });
  afterAll(async () => {
    record.close();
    await server.stop();
  });

  const newRig = async (): Promise<string> =>
    (await lead.granted<RigSummary>('rigs.create', { crewId, name: 'Show', kind: 'show' })).id;
  const write = (rigId: string, by: Visitor, edits: readonly Edit[]) => writeEdits(server, rigId, by.userId, edits);
  const ask = (rigId: string, filter: object = {}, cursor?: number) =>
    lead.granted<HistoryPage>('history.steps', { rigId, filter, cursor });
  const moment = async (rigId: string, seq: number): Promise<Rig> => {
    const { status, text } = await lead.request('GET', momentPath(rigId, seq));
    assert(status === 200, text);
    const thawed = thawRig(text);
    assert(thawed.ok, text.slice(0, 100));
    return thawed.value;
  };
  const head = async (rigId: string) =>
    Number((await server.running.store.prisma.rig.findUniqueOrThrow({ where: { id: rigId } })).head);
  const indexOf = async (rigId: string) =>
    (
      await server.running.store.sql.query<Indexed>(
        'select seq, nth, author, part, row_id, name, field, before, after from rig_change where rig_id = $1 order by seq, nth',
        [rigId],
      )
    ).map((row) => ({ ...row, seq: Number(row.seq) }));
  const forget = async (rigId: string) => {
    const { prisma } = server.running.store;
    await prisma.rigChange.deleteMany({ where: { rigId } });
    await prisma.rigChangeMark.deleteMany({ where: { rigId } });
  };
  const told = ({ name, change: { field, before, after } }: ToldChange) => [name, field, before, after];

  it('says who changed what, from what to what, and finds it by unit, cell, person and time', async () => {
    const rigId = await newRig();
    await write(rigId, lead, [unit('a', 1), unit('b', 11)]);
    await write(rigId, editor, [setCell('a', 'address', 613)]);
    await write(rigId, lead, [setCell('a', 'purpose', 'front'), setCell('b', 'address', null)]);
    // A minute lies between one row of the log and the next.
    await server.running.store.sql.query('update rig_update set at = to_timestamp(seq * 60) where rig_id = $1', [
      rigId,
    ]);
    const between = new Date((await head(rigId)) * 60_000).toISOString();
    const page = await ask(rigId);
    expect(page).toMatchObject({ next: null, unknownUntil: null });
    expect(page.steps.map(({ byName, total }) => [byName, total])).toEqual([
      ['Ona Reeve', 2],
      ['Tam Oduya', 1],
      ['Ona Reeve', 2],
    ]);
    expect(page.steps[1]?.changes.map(told)).toEqual([['Bar 1 · a', 'address', 1, 613]]);
    expect(page.steps[2]?.counts).toEqual([{ part: 'unit', card: null, what: 'added', field: null, count: 2 }]);

    const changesOf = async (filter: object) =>
      (await ask(rigId, filter)).steps.flatMap(({ changes }) => changes.map(told));
    expect(await changesOf({ unit: 'b' })).toMatchObject([
      ['Bar 1 · b', 'address', 11, null],
      ['Bar 1 · b', null, null, {}],
    ]);
    expect(await changesOf({ unit: 'a', field: 'address' })).toMatchObject([
      ['Bar 1 · a', 'address', 1, 613],
      ['Bar 1 · a', null, null, {}],
    ]);
    expect(await changesOf({ field: 'purpose' })).toEqual([['Bar 1 · a', 'purpose', null, 'front']]);
    expect(await changesOf({ named: '1 · B' })).toHaveLength(2);
    expect(await changesOf({ named: '100%' })).toEqual([]);
    expect(await changesOf({ person: editor.userId })).toHaveLength(1);
    expect(await changesOf({ from: between })).toHaveLength(2);
    expect(await changesOf({ to: between })).toHaveLength(3);

    const people = await lead.granted<readonly HistoryPerson[]>('history.people', { rigId });
    expect(people.map(({ name }) => name)).toEqual(['Ona Reeve', 'Tam Oduya']);
    // An account that is gone leaves what it did.
    await server.running.store.sql.query('update rig_change set author = $2 where rig_id = $1 and author = $3', [
      rigId,
      'nobody any more',
      editor.userId,
    ]);
    expect((await ask(rigId)).steps[1]?.byName).toBeNull();
  });

  /** Edits of three peers of two people, made before they heard of each other; they come to the log in another order than they were made in. */
  const scribble = async (rigId: string, seed: number) => {
    const rng = seededRng(seed);
    const { sync } = server.running;
    const state = await sync.readRig(rigId, (doc) => Y.encodeStateAsUpdate(doc));
    assert(state, 'the rig is there');
    const made = new Y.Doc();
    Y.applyUpdate(made, state);
    const peers = createDocPeers([11, 12, 13], made);
    const waiting: { by: string; bytes: Uint8Array }[] = [];
    peers.docs.forEach((doc, nth) => {
      const by = nth === 0 ? lead.userId : editor.userId;
      doc.on('update', (bytes, origin) => origin !== 'network' && waiting.push({ by, bytes }));
    });
    for (let step = 0; step < 25; step++) {
      applyPlan(rng.pick(peers.docs), randomPlan(rng, 6, 4), 'mine');
      if (rng.int(2) === 0) peers.deliverOne(rng);
    }
    while (waiting.length > 0) {
      const at = rng.int(waiting.length);
      const { by, bytes } = present(waiting[at], 'one that waits');
      const taken = await sync.applyUpdate(rigId, by, bytes);
      assert(taken.ok || taken.error === 'gap', JSON.stringify(taken));
      // What builds on an update that is not there yet is sent again later, as a page would.
      if (taken.ok) waiting.splice(at, 1);
    }
  };

  it('[HI5] of edits made at once the last of each cell is what stands there, in pieces as at once', async () => {
    for (const seed of [1, 2]) {
      const rigId = await newRig();
      await scribble(rigId, seed);
      const { store } = server.running;
      const atOnce = await indexLog({ store, record }, rigId);
      assert(atOnce.ok && atOnce.value.seq === (await head(rigId)), JSON.stringify(atOnce));
      const whole = await indexOf(rigId);
      await forget(rigId);
      await indexLog({ store, record }, rigId, TINY);
      expect(await indexOf(rigId), `seed ${seed}`).toEqual(whole);

      expect(whole.length).toBeGreaterThan(30);
      const now = await rigOf(server, rigId);
      const ledger = toldLedger();
      let at = 0;
      for (let seq = 1; seq <= (await head(rigId)); seq++) {
        for (; at < whole.length && whole[at]?.seq === seq; at++) ledger.take(changeIn(present(whole[at], 'a row')));
        expect(ledger.all(), `seed ${seed}, ${seq}`).toEqual(toldLedger(await moment(rigId, seq)).all());
      }
      expect(ledger.all()).toEqual(toldLedger(now).all());
    }
  });

  it('[HI5] goes on where it stopped, from a checkpoint and without one, and a cut off piece is done again', async () => {
    const rigId = await newRig();
    const { store } = server.running;
    await write(rigId, lead, [unit('a', 1)]);
    await ask(rigId);
    await createSqlLog(store.sql).checkpoint(rigId);
    await write(rigId, lead, [unit('b', 11), unit('c', 21), unit('d', 31)]);
    // As if a process had ended between two statements.
    await store.prisma.rigChange.create({
      data: {
        ...{ rigId, seq: BigInt(await head(rigId)), nth: 0, author: lead.userId, at: new Date(), part: 'unit' },
        ...{ rowId: 'b', name: 'cut off', field: null, before: null, after: '{}' },
      },
    });
    const { steps } = await ask(rigId);
    expect(steps.map(({ total }) => total)).toEqual([3, 1]);
    const rows = await indexOf(rigId);
    await forget(rigId);
    expect((await ask(rigId)).steps.map(({ total }) => total)).toEqual([3, 1]);
    expect((await indexOf(rigId)).map(({ name }) => name)).toEqual(
      rows.map(({ name }) => name).map((name) => (name === 'cut off' ? 'Bar 1 · b' : name)),
    );
  });

  it('[HI6] looks at every moment, and says so when the log was trimmed before it was indexed', async () => {
    const rigId = await newRig();
    const { sql } = server.running.store;
    const log = createSqlLog(sql);
    const states: Rig[] = [EMPTY_RIG];
    for (let nth = 1; nth <= 4; nth++) {
      await write(rigId, lead, [unit(`u${nth}`, nth * 10)]);
      states[await head(rigId)] = await rigOf(server, rigId);
      if (nth === 2) await log.checkpoint(rigId);
    }
    for (let seq = 1; seq < states.length; seq++) {
      const was = states[seq] ?? EMPTY_RIG;
      expect(diffEdits(diffRigs(await moment(rigId, seq), was)), `moment ${seq}`).toEqual([]);
    }
    const last = await head(rigId);
    for (const none of [0, last + 1, 'x']) {
      expect((await lead.request('GET', `/api/rigs/${rigId}/moments/${none}`)).status).toBe(404);
    }
    await log.trim(rigId, new Date(Date.now() + 60_000));
    expect((await lead.request('GET', momentPath(rigId, 1))).status).toBe(404);
    const page = await ask(rigId);
    expect(page.unknownUntil).not.toBeNull();
    expect(page.steps.flatMap(({ changes }) => changes.map(({ name }) => name))).toEqual(['Bar 1 · u4', 'Bar 1 · u3']);
    expect(diffEdits(diffRigs(await moment(rigId, last), states[last] ?? EMPTY_RIG))).toEqual([]);
  });

  it('counts what an import added, tells it page by page, and leaves out what is too long', async () => {
    const rigId = await newRig();
    const many = Array.from({ length: 250 }, (_, nth) => unit(`u${String(nth).padStart(3, '0')}`, nth + 1));
    await write(rigId, lead, [...many, { kind: 'set-position', name: 'Bar 1', order: 1 }]);
    const [step] = (await ask(rigId)).steps;
    assert(step, 'the import is a step');
    expect(step).toMatchObject({
      total: 251,
      counts: [
        { part: 'unit', count: 250 },
        { part: 'position', count: 1 },
      ],
    });
    expect(step.changes.length).toBeLessThan(10);
    const found: number[] = [];
    let cursor: number | null = 0;
    while (cursor !== null) {
      const page: StepPage = await lead.granted('history.changes', { rigId, filter: {}, seq: step.seq, cursor });
      found.push(...page.changes.map(({ nth }) => nth));
      cursor = page.next;
    }
    expect(found).toEqual(Array.from({ length: 251 }, (_, nth) => nth));
    const cells = { notes: 'n'.repeat(2000), purpose: 'p'.repeat(2000), colour: 'c'.repeat(2000) };
    await write(rigId, lead, [{ kind: 'add-fixture', fixture: fixtureId('long'), cells }]);
    expect((await ask(rigId)).steps[0]?.changes[0]).toMatchObject({
      long: true,
      change: { before: null, after: null },
    });
  });

  it('tells steps a hundred at a time', async () => {
    const rigId = await newRig();
    await write(rigId, lead, [unit('a', 1)]);
    for (let nth = 0; nth < 104; nth++) await write(rigId, lead, [setCell('a', 'purpose', `purpose ${nth}`)]);
    const first = await ask(rigId);
    expect(first.steps).toHaveLength(100);
    assert(first.next !== null, 'there is more');
    const rest = await ask(rigId, {}, first.next);
    expect(rest.steps).toHaveLength(5);
    expect(rest.next).toBeNull();
    const seqs = [...first.steps, ...rest.steps].map(({ seq }) => seq);
    expect(seqs).toEqual([...seqs].sort((a, b) => b - a));
    expect(new Set(seqs).size).toBe(105);
  });
});

/** A row of the index. */
interface Indexed {
  readonly seq: number;
  readonly nth: number;
  readonly part: string;
  readonly row_id: string;
  readonly name: string;
  readonly field: string | null;
  readonly before: string | null;
  readonly after: string | null;
}

/** The change that a row of the index keeps. */
function changeIn({ part, row_id: row, field, before, after }: Indexed): Change {
  const value = (text: string | null) => (text === null ? null : JSON.parse(text));
  return { part, row, field, before: value(before), after: value(after) } as Change;
}
