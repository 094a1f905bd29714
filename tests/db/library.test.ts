import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { assert, present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { applyDraftEdits } from '#document/draft/apply-draft-edits.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import type { DraftEdit } from '#engine/draft/draft.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { contentHash } from '#engine/type/content-hash.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { pinMode } from '#engine/type/pin.ts';
import { exportGdtf } from '#exchange/gdtf/export-gdtf.ts';
import { sha256 } from '#server/tasks/library/sha256.ts';
import { gdtfChannel, gdtfDescription, gdtfFile } from '#tests/support/gdtf-file.ts';
import { usableType } from '#tests/support/random-type.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { HELLO, probeSync } from '#tests/support/sync-probe.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Answer, Visitor } from '#tests/support/visitor.ts';
import {
  type DraftDetails,
  type DraftPublished,
  type FileTaken,
  type NamedDraft,
  type TypeDetails,
  type TypeRevision,
  type TypeSummary,
  typeFilePath,
  typeUploadPath,
  type WhereUsed,
} from '#wire/library.ts';

const FILE = { 'content-type': 'application/octet-stream' };

/** A file of one mode with as many dimmers as asked for. */
function sampleFile(slots: number, change: (description: string) => string = (same) => same): Uint8Array<ArrayBuffer> {
  const channels = Array.from({ length: slots }, (_, at) => gdtfChannel('Body', `Dimmer${at + 1}`, String(at + 1)));
  const mode = `<DMXMode Name="M" Geometry="Body"><DMXChannels>${channels.join('')}</DMXChannels></DMXMode>`;
  return Uint8Array.from(gdtfFile(change(gdtfDescription('<Geometry Name="Body"/>', mode))));
}

describe.each(STORE_KINDS)('the library on the %s store', (kind) => {
  let server: TestServer;
  let lead: Visitor;
  let crewId: string;
  beforeAll(async () => {
    server = await startTestServer(kind);
  });
  afterAll(() => server.stop());

  /** Each test has a crew of its own. */
  const newCrew = async () => {
    lead = await server.person('Ada');
    crewId = (await lead.granted<{ id: string }>('crews.create', { name: 'Crew' })).id;
  };
  const send = (bytes: Uint8Array<ArrayBuffer>, name = ''): Promise<Answer> =>
    lead.request('POST', `${typeUploadPath(crewId)}?name=${encodeURIComponent(name)}`, { body: bytes, headers: FILE });
  const taken = async (bytes: Uint8Array<ArrayBuffer>, name = ''): Promise<FileTaken> => {
    const answer = await send(bytes, name);
    assert(answer.status === 200, `the file was refused: ${answer.text}`);
    return JSON.parse(answer.text);
  };
  const list = () => lead.granted<TypeSummary[]>('library.list', { crewId });
  const own = async () => (await list()).filter((type) => type.origin !== 'built-in');
  const get = (typeId: string) => lead.granted<TypeDetails>('library.get', { crewId, typeId });
  const refusalOf = async (procedure: string, input: object) =>
    JSON.parse((await lead.call(procedure, input)).text).error?.data.refusal;
  const openDraft = async (typeId: string | null) =>
    (await lead.granted<{ draftId: string }>('library.openDraft', { crewId, typeId })).draftId;
  /** Writes into a draft as a page does. */
  const write = async (draftId: string, edits: readonly DraftEdit[]) => {
    const probe = probeSync(lead.draftSocket(draftId));
    probe.send(HELLO);
    const welcome = present(await probe.hear('welcome'), 'a draft lets its crew in');
    const doc = new Y.Doc();
    Y.applyUpdate(doc, welcome.missing);
    const before = Y.encodeStateVector(doc);
    assert(applyDraftEdits(doc, edits, 'test').ok, 'the edits are taken');
    probe.send({ kind: 'update', counter: 1, bytes: Y.encodeStateAsUpdate(doc, before) });
    return { probe, ack: await probe.hear('ack') };
  };
  const publish = (draftId: string, note = '') =>
    lead.granted<DraftPublished>('library.publishDraft', { draftId, note });

  it('begins with what comes with the program, each of one revision that nobody can remove', async () => {
    await newCrew();
    const types = await list();
    expect(types.map(({ id }) => id)).toEqual(GENERIC_TYPES.map((_, at) => `built-in-${at + 1}`));
    const { newest, revisions } = await get('built-in-1');
    expect(newest.type).toEqual(GENERIC_TYPES[0]);
    expect(revisions.map(({ number }) => number)).toEqual([0]);
    expect(newest.hash).toBe(await contentHash(newest.type, sha256));
    expect(await refusalOf('library.remove', { crewId, typeId: 'built-in-1' })).toBe('built-in-type');
    expect(await refusalOf('library.get', { crewId, typeId: 'built-in-99' })).toBe('no-such-type');
    expect(await refusalOf('library.revision', { crewId, typeId: 'built-in-1', number: 1 })).toBe('no-such-revision');
  });

  it('takes a file as a new type, the same once more as the same, another as a revision', async () => {
    await newCrew();
    const first = await taken(sampleFile(3));
    expect([first.outcome, first.number, first.report.read.channels]).toEqual(['new', 1, 3]);
    expect(first.type).toMatchObject({ maker: 'Corvid Stage', model: 'Sample', origin: 'file', revision: 1 });
    expect(first.type.modes).toEqual([{ name: 'M', footprints: [3], firmware: [] }]);
    const again = await taken(sampleFile(3));
    expect([again.outcome, again.number, again.type.id]).toEqual(['same', 1, first.type.id]);
    const next = await taken(sampleFile(4));
    expect([next.outcome, next.number, next.type.id]).toEqual(['revision', 2, first.type.id]);
    // What an older revision says is a revision like any other.
    expect((await taken(sampleFile(3))).number).toBe(3);
    const details = await get(first.type.id);
    expect(details.revisions.map(({ number, by }) => [number, by])).toEqual([
      [3, 'Ada'],
      [2, 'Ada'],
      [1, 'Ada'],
    ]);
    expect(details.newest.hash).toBe(first.type.hash);
    expect(details.newest.report).toEqual(first.report);
    const second = await lead.granted<TypeRevision>('library.revision', { crewId, typeId: first.type.id, number: 2 });
    expect(second.type.modes[0]?.channels).toHaveLength(4);
    expect((await list())[0]).toEqual(details.summary);
  });

  it('knows a type by its identity, else by maker and model however they are spelled', async () => {
    await newCrew();
    const first = await taken(sampleFile(1));
    const renamed = await taken(sampleFile(1, (text) => text.replace('Name="Sample"', 'Name="Sample II"')));
    expect([renamed.outcome, renamed.type.id, renamed.type.model]).toEqual(['revision', first.type.id, 'Sample II']);
    const withoutGuid = (text: string) => text.replace(/ FixtureTypeID="[^"]*"/, '');
    const spelled = (text: string) => withoutGuid(text).replace('"Corvid Stage"', '"CÓRVID  stage"');
    const other = await taken(sampleFile(2, spelled));
    expect(other.outcome).toBe('new');
    expect((await taken(sampleFile(3, withoutGuid))).type.id).toBe(other.type.id);
    // The first would be called as the second is.
    const clash = await send(sampleFile(9));
    expect([clash.status, JSON.parse(clash.text).code]).toEqual([409, 'type-name-taken']);
    expect(await own()).toHaveLength(2);
  });

  it('calls a type without a name after its file, or refuses it', async () => {
    await newCrew();
    const nameless = sampleFile(1, (text) => text.replace('Name="Sample" Manufacturer="Corvid Stage"', ''));
    expect(JSON.parse((await send(nameless)).text).code).toBe('type-unnamed');
    const { type, report } = await taken(nameless, 'Corvid@Heron@rev 1.gdtf');
    expect([type.maker, type.model]).toEqual(['Corvid', 'Heron']);
    expect(report.guesses).toContainEqual({ kind: 'named-by-file', name: 'Heron' });
  });

  it('changes nothing for a file it refuses, and says why', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(2));
    const before = await list();
    const whole = sampleFile(5);
    const broken = [new Uint8Array(), Uint8Array.from([1, 2, 3]), whole.slice(0, whole.length - 30)];
    for (const bytes of broken) {
      const answer = await send(bytes);
      expect(answer.status).toBe(422);
      expect(JSON.parse(answer.text).message).toMatch(/^\S.*\.$/);
    }
    expect(await list()).toEqual(before);
    expect((await get(type.id)).revisions).toHaveLength(1);
  });

  it('gives a revision out as a file that reads as the same type', async () => {
    await newCrew();
    const rng = seededRng(7);
    for (let nth = 0; nth < 5; nth++) {
      const type: FixtureType = { ...usableType(rng), maker: 'Grüße & Söhne', model: `T${nth}`, guid: '' };
      const { type: summary } = await taken(Uint8Array.from(exportGdtf(type)));
      const { newest } = await get(summary.id);
      const url = `${server.url}${typeFilePath(crewId, summary.id, 1)}`;
      const answer = await fetch(url, { headers: { cookie: lead.cookie } });
      expect(answer.headers.get('content-disposition')).toBe(
        `attachment; filename="Gru_e _ Sohne@T${nth}@r1.gdtf"; filename*=UTF-8''Gr%C3%BC%C3%9Fe%20_%20S%C3%B6hne%40T${nth}%40r1.gdtf`,
      );
      const again = await taken(new Uint8Array(await answer.arrayBuffer()));
      expect([again.outcome, again.type.hash]).toEqual(['same', newest.hash]);
    }
    for (const file of ['r2.gdtf', 'r01.gdtf', 'r1.zip', 'r.gdtf'])
      expect((await lead.request('GET', `/api/crews/${crewId}/types/built-in-1/${file}`)).status).toBe(404);
    expect((await lead.request('GET', typeFilePath(crewId, 'built-in-1', 0))).status).toBe(200);
  });

  it('keeps every revision when many come at once, numbered without a gap', async () => {
    await newCrew();
    const others = await Promise.all([server.person('Ben'), server.person('Cem')]);
    for (const other of others) {
      const { path } = await lead.granted<{ path: string }>('invitations.create', { crewId, role: 'editor' });
      await other.granted('invitations.accept', { token: path.slice('/join/'.length) });
    }
    const people = [lead, ...others];
    const answers = await Promise.all(
      [1, 2, 3, 4, 5, 6].map((slots) =>
        present(people[slots % 3], 'three people').request('POST', typeUploadPath(crewId), {
          body: sampleFile(slots),
          headers: FILE,
        }),
      ),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 200, 200, 200]);
    const all: FileTaken[] = answers.map(({ text }) => JSON.parse(text));
    expect(all.map(({ number }) => number).sort()).toEqual([1, 2, 3, 4, 5, 6]);
    expect(new Set(all.map(({ type }) => type.id)).size).toBe(1);
  });

  it('never changes a revision, whoever asks the store', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(1));
    const { sql, prisma } = server.running.store;
    for (const column of ['content', 'hash', 'note'])
      await expect(
        sql.query(`update type_revision set ${column} = 'other' where type_id = $1`, [type.id]),
      ).rejects.toThrow(/never changes/);
    const where = { typeId_number: { typeId: type.id, number: 1 } };
    await expect(prisma.typeRevision.update({ where, data: { content: '{}' } })).rejects.toThrow();
    expect((await get(type.id)).newest.hash).toBe(type.hash);
  });

  it('takes a type off the list with its drafts, and gives its name free', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(1));
    const draftId = await openDraft(type.id);
    const { probe } = await write(draftId, [{ of: 'facts', field: 'weight', value: '12' }]);
    await lead.granted('library.remove', { crewId, typeId: type.id });
    expect((await probe.hear('role'))?.role).toBe('reader');
    probe.close();
    expect(await own()).toEqual([]);
    expect(await refusalOf('library.get', { crewId, typeId: type.id })).toBe('no-such-type');
    expect(await refusalOf('library.remove', { crewId, typeId: type.id })).toBe('no-such-type');
    expect(await refusalOf('library.publishDraft', { draftId, note: '' })).toBe('draft-closed');
    expect((await lead.granted<DraftDetails>('library.draft', { draftId })).state).toBe('dropped');
    const again = await taken(sampleFile(1));
    expect([again.outcome, again.number]).toEqual(['new', 1]);
    expect(again.type.id).not.toBe(type.id);
  });

  const NEW_TYPE: readonly DraftEdit[] = [
    { of: 'facts', field: 'maker', value: 'Corvid' },
    { of: 'facts', field: 'model', value: 'Wren' },
    { of: 'mode', mode: 'm', field: 'order', value: 1 },
    { of: 'mode', mode: 'm', field: 'name', value: 'Basic' },
    { of: 'row', mode: 'm', row: 'r', field: 'order', value: 1 },
    { of: 'row', mode: 'm', row: 'r', field: 'slots', value: '1-2' },
    { of: 'row', mode: 'm', row: 'r', field: 'attribute', value: 'Dimmer' },
  ];

  it('publishes a draft as a new type, once, and lets nobody write in it afterwards', async () => {
    await newCrew();
    const draftId = await openDraft(null);
    const stopped = await publish(draftId);
    expect(stopped.outcome).toBe('stopped');
    const { probe, ack } = await write(draftId, NEW_TYPE);
    expect(ack).toBeDefined();
    expect((await lead.granted<NamedDraft[]>('library.drafts', { crewId })).map((each) => each.model)).toEqual([
      'Wren',
    ]);
    const published = await publish(draftId, 'From the manual\u0000');
    assert(published.outcome === 'new', JSON.stringify(published));
    expect(published.type).toMatchObject({ maker: 'Corvid', model: 'Wren', origin: 'draft', revision: 1 });
    expect(published.type.modes).toEqual([{ name: 'Basic', footprints: [2], firmware: [] }]);
    expect((await get(published.type.id)).newest.note).toBe('From the manual\ufffd');
    expect((await probe.hear('role'))?.role).toBe('reader');
    probe.close();
    expect(await refusalOf('library.publishDraft', { draftId, note: '' })).toBe('draft-closed');
    expect(await refusalOf('library.dropDraft', { draftId })).toBe('draft-closed');
    const draft = await lead.granted<DraftDetails>('library.draft', { draftId });
    expect([draft.state, draft.typeId, draft.by]).toEqual(['published', published.type.id, 'Ada']);
    expect(await lead.granted('library.drafts', { crewId })).toEqual([]);
    const late = probeSync(lead.draftSocket(draftId));
    late.send(HELLO);
    expect((await late.hear('welcome'))?.role).toBe('reader');
    late.close();
    // A second type of that name is not made by accident.
    const twin = await openDraft(null);
    (await write(twin, NEW_TYPE)).probe.close();
    expect(await refusalOf('library.publishDraft', { draftId: twin, note: '' })).toBe('type-name-taken');
    expect((await lead.granted<DraftDetails>('library.draft', { draftId: twin })).state).toBe('open');
  });

  it('publishes a revision of a type, what it does not touch left as it was, and no revision when nothing was', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(2));
    const base = (await get(type.id)).newest.type;
    const same = await openDraft(type.id);
    expect((await lead.granted<DraftDetails>('library.draft', { draftId: same })).baseType).toEqual(base);
    expect((await get(type.id)).drafts.map(({ id, base: number }) => [id, number])).toEqual([[same, 1]]);
    const untouched = await publish(same);
    assert(untouched.outcome !== 'stopped', JSON.stringify(untouched));
    expect([untouched.outcome, untouched.number]).toEqual(['same', 1]);
    const draftId = await openDraft(type.id);
    (await write(draftId, [{ of: 'facts', field: 'weight', value: '7.5' }])).probe.close();
    const published = await publish(draftId);
    assert(published.outcome === 'revision', JSON.stringify(published));
    expect((await get(type.id)).newest.type).toEqual({ ...base, physical: { ...base.physical, weight: 7.5 } });
  });

  it('makes a type of its own from one that comes with the program', async () => {
    await newCrew();
    const draftId = await openDraft('built-in-3');
    const draft = await lead.granted<DraftDetails>('library.draft', { draftId });
    expect([draft.typeId, draft.base, draft.baseType]).toEqual([null, null, GENERIC_TYPES[2]]);
    const published = await publish(draftId);
    assert(published.outcome === 'new', JSON.stringify(published));
    expect(published.type.hash).toBe((await get('built-in-3')).newest.hash);
  });

  it('opens a draft of whatever a file may hold', async () => {
    await newCrew();
    const rng = seededRng(11);
    for (let nth = 0; nth < 10; nth++) {
      const type: FixtureType = { ...usableType(rng), maker: 'Corvid', model: `R${nth}`, guid: '' };
      const { type: summary } = await taken(Uint8Array.from(exportGdtf(type)));
      const published = await publish(await openDraft(summary.id));
      assert(published.outcome !== 'stopped', JSON.stringify(published));
      expect(['same', 'revision']).toContain(published.outcome);
    }
  });

  it('drops a draft for everybody', async () => {
    await newCrew();
    const draftId = await openDraft(null);
    const { probe } = await write(draftId, NEW_TYPE);
    await lead.granted('library.dropDraft', { draftId });
    expect((await probe.hear('role'))?.role).toBe('reader');
    probe.close();
    expect(await refusalOf('library.publishDraft', { draftId, note: '' })).toBe('draft-closed');
  });

  it('says which rigs have pinned its modes, at which revision, on how many units', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(2));
    const { newest } = await get(type.id);
    const revision = { typeId: type.id, number: 1, hash: type.hash, type: newest.type };
    const rigs = await Promise.all(
      ['Used', 'Unused'].map((name) => lead.granted<{ id: string }>('rigs.create', { crewId, name, kind: 'show' })),
    );
    const used = present(rigs[0], 'a rig').id;
    const doc = present(await server.running.sync.readRig(used, (one) => Y.encodeStateAsUpdate(one)), 'the rig');
    const mine = new Y.Doc();
    Y.applyUpdate(mine, doc);
    const named = { type: 'Corvid Stage Sample', mode: 'M' };
    const pin = pinMode(revision, 'M');
    const made = applyPlan(
      mine,
      {
        name: 'edit',
        edits: [
          { kind: 'set-mode', ...named, footprints: [2], pin },
          ...['f1', 'f2'].map((id) => ({ kind: 'add-fixture' as const, fixture: fixtureId(id), cells: named })),
        ],
      },
      'test',
    );
    assert(made.ok, JSON.stringify(made));
    await server.running.sync.applyUpdate(used, lead.userId, Y.encodeStateAsUpdate(mine));
    const found = await lead.granted<WhereUsed>('library.whereUsed', { crewId, typeId: type.id });
    expect(found).toEqual({
      uses: [{ rigId: used, rigName: 'Used', modes: [{ mode: 'M', units: 2, number: 1, hash: type.hash }] }],
      looked: 2,
      rigs: 2,
    });
    expect(await refusalOf('library.whereUsed', { crewId, typeId: 'nothing' })).toBe('no-such-type');
  });

  it('answers for a type of another crew as for one that is not there', async () => {
    await newCrew();
    const { type } = await taken(sampleFile(1));
    const draftId = await openDraft(type.id);
    await newCrew();
    for (const procedure of ['library.get', 'library.remove', 'library.whereUsed', 'library.openDraft'])
      expect(await refusalOf(procedure, { crewId, typeId: type.id })).toBe('no-such-type');
    expect(await refusalOf('library.draft', { draftId })).toBe('no-such-draft');
    expect((await lead.request('GET', typeFilePath(crewId, type.id, 1))).status).toBe(404);
  });

  it('lets one person send two files at once, not three', async () => {
    await newCrew();
    // Whether a third file comes before those that do not end is a race: another round, until it finds both of them in their places.
    let third = 0;
    let two: number[] = [];
    for (let round = 0; third !== 429 && round < 50; round++) {
      const held = [holdBack(sampleFile(1)), holdBack(sampleFile(2))];
      const waiting = held.map(({ body }) => lead.request('POST', typeUploadPath(crewId), { body, headers: FILE }));
      third = (await send(sampleFile(3))).status;
      for (const { letGo } of held) letGo();
      two = (await Promise.all(waiting)).map(({ status }) => status);
    }
    expect(third).toBe(429);
    expect(two).toEqual([200, 200]);
    expect((await send(sampleFile(4))).status).toBe(200);
  });
});

/** A body whose last byte is sent when it is let go. */
function holdBack(bytes: Uint8Array<ArrayBuffer>): { readonly body: ReadableStream; readonly letGo: () => void } {
  let letGo: () => void = () => undefined;
  const body = new ReadableStream({
    start(stream) {
      stream.enqueue(bytes.subarray(0, -1));
      letGo = () => {
        stream.enqueue(bytes.subarray(-1));
        stream.close();
      };
    },
  });
  return { body, letGo: () => letGo() };
}
