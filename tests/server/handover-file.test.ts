import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assert } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { HANDOVER_LIMITS } from '#exchange/handover/limits.ts';
import { writeHandover } from '#exchange/handover/write-handover.ts';
import { sha256 } from '#server/tasks/library/sha256.ts';
import { handoverAbout } from '#tests/support/handover-about.ts';
import { forgedZip } from '#tests/support/hostile-zip.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Answer, Visitor } from '#tests/support/visitor.ts';
import { writeEdits } from '#tests/support/write-edits.ts';
import { CAPS } from '#wire/caps.ts';
import {
  type HandoverFileLook,
  handoverFileLookPath,
  handoverFilePath,
  handoverFileTakePath,
} from '#wire/handovers.ts';
import { revisionPath } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';

const FILE = { 'content-type': 'application/octet-stream' };
const mode: Edit = { kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] };
const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address },
});

/** One installation writes the file, another one takes it in. */
describe('a handover file from an installation on Postgres to an embedded one', () => {
  let here: TestServer;
  let there: TestServer;
  let giver: Visitor;
  let taker: Visitor;
  let giverCrew: string;
  let takerCrew: string;
  beforeAll(async () => {
    here = await startTestServer('postgres');
    there = await startTestServer('embedded');
    giver = await here.person('Gil');
    taker = await there.person('Tess');
    giverCrew = (await giver.granted<{ id: string }>('crews.create', { name: 'Lampwrights' })).id;
    takerCrew = (await taker.granted<{ id: string }>('crews.create', { name: 'Night Shift' })).id;
  });
  afterAll(async () => {
    await here.stop();
    await there.stop();
  });

  const newRig = async (): Promise<string> => {
    const asked = { crewId: giverCrew, name: 'Winter “show”', kind: 'show' };
    const { id } = await giver.granted<RigSummary>('rigs.create', asked);
    const contact = setCard('contact', 'c1', { name: 'Ona Reeve', email: 'ona@house.example' });
    await writeEdits(here, id, giver.userId, [mode, unit('a', 1), unit('b', 11), ...contact]);
    await giver.granted('revisions.freeze', { rigId: id, note: 'As hung', accepted: { by: '', keys: [] } });
    return id;
  };
  const fileOf = async (rigId: string, number = 1) => {
    const headers = { cookie: giver.cookie, origin: here.url, 'content-type': 'application/json' };
    const body = JSON.stringify({ words: 'Mind the step.' });
    const answer = await fetch(here.url + handoverFilePath(rigId, number), { method: 'POST', headers, body });
    assert(answer.status === 200, `no file: ${answer.status}`);
    return { bytes: new Uint8Array(await answer.arrayBuffer()), name: answer.headers.get('content-disposition') ?? '' };
  };
  const look = (bytes: Uint8Array) =>
    taker.request('POST', handoverFileLookPath(takerCrew), { body: Uint8Array.from(bytes), headers: FILE });
  const take = (bytes: Uint8Array, query = 'name=Ours&kind=show') =>
    taker.request('POST', `${handoverFileTakePath(takerCrew)}?${query}`, {
      body: Uint8Array.from(bytes),
      headers: FILE,
    });
  const seen = ({ status, text }: Answer): HandoverFileLook => {
    assert(status === 200, text);
    return JSON.parse(text);
  };
  const rigsThere = () => taker.granted<readonly RigSummary[]>('rigs.list');

  it('brings the same revision to the byte, and who gave it', async () => {
    const rigId = await newRig();
    const { bytes, name } = await fileOf(rigId);
    expect(name).toContain("filename*=UTF-8''Winter%20%E2%80%9Cshow%E2%80%9D-r1.handover.zip");
    const first = seen(await look(bytes));
    expect(first).toMatchObject({
      crewName: 'Lampwrights',
      rigName: 'Winter “show”',
      number: 1,
      note: 'As hung',
      words: 'Mind the step.',
      units: 2,
      by: 'Gil',
      lastHad: [],
      here: null,
    });
    expect(await rigsThere()).toEqual([]);
    const rig: RigSummary = JSON.parse((await take(bytes)).text);
    expect(rig).toMatchObject({ name: 'Ours', crewId: takerCrew });
    const { text } = await giver.request('GET', revisionPath(rigId, 1, 'rig'));
    expect((await taker.request('GET', revisionPath(rig.id, 1, 'rig'))).text).toBe(text);
    const from = { rigId, rigName: 'Winter “show”', crewName: 'Lampwrights', number: 1, way: 'file' };
    expect(rig.startedFrom).toMatchObject(from);
    const [revision] = await taker.granted<{ by: string; note: string }[]>('revisions.list', { rigId: rig.id });
    expect(revision).toMatchObject({ by: 'Gil', note: 'As hung', hash: first.hash, number: 1 });
    const kinds = (server: TestServer, crewId: string) =>
      server.running.store.prisma.auditEntry.findMany({ where: { crewId }, select: { kind: true } });
    expect(await kinds(here, giverCrew)).toContainEqual({ kind: 'handover-written' });
    expect(await kinds(there, takerCrew)).toContainEqual({ kind: 'handover-read' });
    // The same file once more says so; the next revision knows what was had last.
    expect(seen(await look(bytes)).here).toMatchObject({ rigId: rig.id, rigName: 'Ours' });
    await writeEdits(here, rigId, giver.userId, [unit('c', 21)]);
    await giver.granted('revisions.freeze', { rigId, note: 'Later', accepted: { by: '', keys: [] } });
    const next = seen(await look((await fileOf(rigId, 2)).bytes));
    expect(next).toMatchObject({ here: null, lastHad: [{ crewId: takerCrew, rigId: rig.id, number: 1 }] });
  });

  it('holds no e-mail address of a member, no session and no secret', async () => {
    const { prisma } = here.running.store;
    const { bytes } = await fileOf(await newRig());
    const texts = Object.values(unzipSync(bytes)).map((each) => new TextDecoder().decode(each));
    const secrets = [
      ...(await prisma.user.findMany()).flatMap(({ id, email }) => [id, email]),
      ...(await prisma.account.findMany()).flatMap(({ password }) => password ?? []),
      ...(await prisma.session.findMany()).map(({ token }) => token),
      'password',
    ];
    expect(secrets.length).toBeGreaterThan(4);
    for (const secret of secrets) expect(texts.filter((each) => each.includes(secret))).toEqual([]);
    // What the rig's own record says of a person is the rig's, and goes along.
    expect(texts.some((each) => each.includes('ona@house.example'))).toBe(true);
  });

  it('refuses a file that is not whole with a sentence, and makes nothing of it', async () => {
    const before = (await rigsThere()).length;
    const { bytes } = await fileOf(await newRig());
    const files = unzipSync(bytes);
    const rng = seededRng(5);
    const bad: readonly (readonly [code: string, file: Uint8Array])[] = [
      ['archive-empty', new Uint8Array()],
      ['not-an-archive', Uint8Array.from({ length: 50_000 }, () => rng.int(256))],
      ['archive-truncated', bytes.slice(0, -30)],
      ['part-changed', zipSync({ ...files, 'rig.json': new TextEncoder().encode('{}') })],
      ['path-outside', zipSync({ ...files, '../../x': new Uint8Array(3) })],
      ['entry-too-large', forgedZip('rig.json', new Uint8Array(1000), { size: 110_000_000 })],
      ['size-untrue', forgedZip('rig.json', new Uint8Array(2_000_000), { size: 1000 })],
    ];
    for (const [code, file] of bad) {
      for (const answer of [await look(file), await take(file)]) {
        expect([answer.status, JSON.parse(answer.text).code]).toEqual([422, code]);
        expect(JSON.parse(answer.text).message).toMatch(/^\S.{20,}\.$/);
      }
    }
    expect(CAPS.handoverFile).toBe(HANDOVER_LIMITS.bytes);
    expect((await look(new Uint8Array(CAPS.handoverFile + 1))).status).toBe(413);
    expect((await take(bytes, 'name=&kind=show')).status).toBe(400);
    expect((await take(bytes, 'name=x&kind=boat')).status).toBe(400);
    expect(JSON.parse((await take(bytes, 'name=x&kind=house&venueId=none')).text).code).toBe('no-such-venue');
    expect(await rigsThere()).toHaveLength(before);
    expect([...here.lines, ...there.lines].filter((line) => line.includes(' trouble '))).toEqual([]);
  }, 120_000);

  it('refuses a whole file of a rig that cannot be read, though every hash agrees', async () => {
    const forged = async (rig: string) => {
      const texts = { rig, findings: '[]', patch: '', readMe: '' };
      const file = await writeHandover(handoverAbout(rig), texts, sha256);
      assert(file, 'a small file');
      return JSON.parse((await look(file)).text).code;
    };
    expect(await forged('{"format":1}')).toBe('rig-unreadable');
    expect(await forged('')).toBe('rig-unreadable');
  });
});
