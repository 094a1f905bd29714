import { createHash } from 'node:crypto';
import { strToU8, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { freezeRig } from '#document/frozen/frozen-rig.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { hashOf } from '#server/record/record-job.ts';
import { writeManifest } from '#server/tasks/archive/manifest.ts';
import { noteStaged } from '#server/tasks/archive/staged-crew.ts';
import { revisionContent } from '#server/tasks/library/revision-content.ts';
import { sha256 } from '#server/tasks/library/sha256.ts';
import { sweepExpired } from '#server/tasks/sweep-expired.ts';
import {
  auditOf,
  bringInCrew,
  jsonOf,
  lasting,
  lastingUpToIds,
  partsOf,
  sendArchive,
  takeOutCrew,
} from '#tests/support/crew-archive.ts';
import { createFakeClock } from '#tests/support/fake-clock.ts';
import { forgedZip } from '#tests/support/hostile-zip.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import type { ArchiveManifest } from '#wire/crew-archive.ts';
import type { RigRevisionSummary } from '#wire/record.ts';
import { revisionPath } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';

const HOUR = 60 * 60 * 1000;
const LARGE_UNITS = 20_000;
const LARGE_UPDATES = 5_000;
const NOTHING_ACCEPTED = { by: '', keys: [] };

describe.each(STORE_KINDS)('the archive of a crew on the %s store', (kind) => {
  let here: TestServer;
  let there: TestServer;
  let lead: Visitor;
  let editor: Visitor;
  let newcomer: Visitor;
  beforeAll(async () => {
    [here, there] = await Promise.all([startTestServer(kind), startTestServer(kind)]);
    lead = await here.person('Lena');
    editor = await here.person('Ona');
    newcomer = await there.person('Nils');
  });
  afterAll(() => Promise.all([here.stop(), there.stop()]));

  /** Random edits of a rig, in several updates by two people. */
  const editRig = async (rng: Rng, rigId: string): Promise<void> => {
    await writeEdits(here, rigId, lead.userId, [{ kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] }]);
    const units = 1 + rng.int(12);
    for (let nth = 0; nth < units; nth += 1) {
      const edits: Edit[] = [
        {
          kind: 'add-fixture',
          fixture: fixtureId(`u${nth}`),
          cells: {
            channel: nth + 1,
            position: `Bar ${rng.int(3)} ü`,
            unit: String(nth),
            type: 'Wash',
            mode: 'A',
            address: 1 + nth * 4,
          },
        },
      ];
      if (nth > 2 && rng.int(3) === 0) edits.push({ kind: 'remove-fixture', fixture: fixtureId(`u${rng.int(nth)}`) });
      await writeEdits(here, rigId, rng.int(2) === 0 ? lead.userId : editor.userId, edits);
    }
  };

  /** A crew with some of everything. */
  const newCrew = async (seed: number): Promise<string> => {
    const rng = seededRng(seed);
    const { id: crewId } = await lead.granted<{ id: string }>('crews.create', { name: `Crew ${seed} “Ü”` });
    const { path } = await lead.granted<{ path: string }>('invitations.create', { crewId, role: 'editor' });
    await editor.granted('invitations.accept', { token: path.slice('/join/'.length) });
    const venue = await lead.granted<{ id: string }>('venues.create', { crewId, name: 'Playhouse' });
    await editor.granted('listMappings.remember', { crewId, key: 'k', mapping: [{ column: 1 }, null, 'ö'] });
    await editor.granted('listMappings.remember', { crewId, key: 'none', mapping: null });
    const ids: string[] = [];
    for (let nth = 0; nth < 1 + rng.int(3); nth += 1) {
      const venueId = rng.int(2) === 0 ? venue.id : null;
      const { id } = await lead.granted<RigSummary>('rigs.create', {
        crewId,
        name: `Rig ${nth}`,
        kind: 'house',
        venueId,
      });
      await editRig(rng, id);
      ids.push(id);
    }
    const house = present(ids[0], 'a rig');
    await editor.granted('revisions.freeze', { rigId: house, note: 'As hung', accepted: NOTHING_ACCEPTED });
    const show = await lead.granted<RigSummary>('revisions.start', {
      rigId: house,
      number: 1,
      crewId,
      name: 'Show',
      kind: 'show',
    });
    await writeEdits(here, show.id, editor.userId, [{ kind: 'remove-fixture', fixture: fixtureId('u0') }]);
    await newTypes(crewId, rng);
    await newRecords(crewId, house, show.id);
    if (ids.length > 1) await lead.granted('rigs.remove', { rigId: ids[1] });
    return crewId;
  };

  const newTypes = async (crewId: string, rng: Rng): Promise<void> => {
    const { prisma } = here.running.store;
    const generic = present(GENERIC_TYPES[rng.int(GENERIC_TYPES.length)], 'a generic type');
    const typeId = `type${crewId}`;
    const contents = await Promise.all(
      ['One', 'Two'].map((description) =>
        revisionContent({ ...generic, maker: 'Curlew', model: 'Fen', description }, null),
      ),
    );
    const { maker, model, guid } = present(contents[1], 'a second revision');
    await prisma.fixtureType.create({
      data: { id: typeId, crewId, maker, model, guid, key: 'curlew\nfen', newest: 2 },
    });
    for (const [at, { hash, content, summary }] of contents.entries())
      await prisma.typeRevision.create({
        data: {
          typeId,
          number: at + 1,
          hash,
          content,
          summary: JSON.parse(JSON.stringify(summary)),
          ...(at === 0 ? { report: { guesses: [], defects: ['ü'] } } : {}),
          note: 'n',
          origin: 'file',
          at: new Date(1_700_000_000_000 + at),
          by: editor.userId,
        },
      });
    await editor.granted('library.openDraft', { crewId, typeId });
    const dropped = await lead.granted<{ draftId: string }>('library.openDraft', { crewId, typeId: null });
    await lead.granted('library.dropDraft', { draftId: dropped.draftId });
  };

  /** A handover that was declined, and a proposal: what others write, as they are stored. */
  const newRecords = async (crewId: string, house: string, show: string): Promise<void> => {
    const { prisma } = here.running.store;
    const by = { createdBy: lead.userId, createdByName: 'Lena', createdAt: new Date(1_700_000_000_000) };
    await prisma.handover.create({
      data: {
        id: `h${house}`,
        rigId: house,
        number: 1,
        crewId,
        tokenHash: `t${house}`,
        words: 'For you',
        state: 'declined',
        ...by,
        expiresAt: new Date(1_800_000_000_000),
      },
    });
    await prisma.proposal.create({
      data: {
        id: `p${house}`,
        rigId: house,
        fromRigId: show,
        fromRigName: 'Show',
        fromCrewId: crewId,
        fromCrewName: 'Crew',
        number: 1,
        edits: [{ kind: 'x' }],
        words: '',
        ...by,
      },
    });
  };

  const rigsOf = (visitor: Visitor, crewId: string) =>
    visitor.granted<readonly RigSummary[]>('rigs.list').then((rigs) => rigs.filter((rig) => rig.crewId === crewId));
  const hashesOf = async (server: TestServer, visitor: Visitor, crewId: string): Promise<Record<string, string>> => {
    const hashes: Record<string, string> = {};
    for (const { id, name } of await rigsOf(visitor, crewId)) hashes[name] = hashOf(freezeRig(await rigOf(server, id)));
    return hashes;
  };
  const crewsOf = async ({ running }: TestServer) => ({
    crews: await running.store.prisma.crew.count(),
    rigs: await running.store.prisma.rig.count(),
    updates: await running.store.prisma.rigUpdate.count(),
    types: await running.store.prisma.fixtureType.count(),
    notes: await running.store.prisma.setting.count({ where: { key: { startsWith: 'archive-in:' } } }),
  });

  it.each([1, 2, 3, 4])('comes out of another installation as it went in, seed %i', async (seed) => {
    const crewId = await newCrew(seed);
    const archive = await takeOutCrew(here, lead, crewId);
    const taken = await bringInCrew(newcomer, archive);
    expect(taken.crewId).toBe(crewId);
    const again = await takeOutCrew(there, newcomer, crewId);
    expect(lasting(again)).toEqual(lasting(archive));
    const before = auditOf(archive);
    expect(auditOf(again).slice(0, before.length)).toEqual(before);
    expect(
      auditOf(again)
        .slice(before.length)
        .map(({ kind: what }) => what),
    ).toEqual(['archive-in', 'archive-out']);
    expect(await hashesOf(there, newcomer, crewId)).toEqual(await hashesOf(here, lead, crewId));
  });

  it('becomes a crew of its own beside the one it came from, the same up to ids', async () => {
    const crewId = await newCrew(11);
    const archive = await takeOutCrew(here, lead, crewId);
    const stranger = await here.person('Sven');
    const { crewId: copyId } = await bringInCrew(stranger, archive);
    expect(copyId).not.toBe(crewId);
    const again = await takeOutCrew(here, stranger, copyId);
    expect(lastingUpToIds(again)).toEqual(lastingUpToIds(archive));
    expect(await hashesOf(here, stranger, copyId)).toEqual(await hashesOf(here, lead, crewId));
    const [original, copy] = [await rigsOf(lead, crewId), await rigsOf(stranger, copyId)];
    const own = new Set(copy.map(({ id }) => id));
    expect(original.some(({ id }) => own.has(id))).toBe(false);
    // A show of the copy began as the copy's house rig.
    expect(own.has(copy.find(({ name }) => name === 'Show')?.startedFrom?.rigId ?? '')).toBe(true);
    // What is edited in one stays out of the other.
    const edited = present(copy[0], 'a rig');
    const other = await hashesOf(here, lead, crewId);
    await writeEdits(here, edited.id, stranger.userId, [{ kind: 'remove-fixture', fixture: fixtureId('u1') }]);
    expect(await hashesOf(here, lead, crewId)).toEqual(other);
  });

  it('is a crew one can work in: revisions, history and removed rigs came along, members did not', async () => {
    const crewId = await newCrew(2);
    const archive = await takeOutCrew(here, lead, crewId);
    const worker = await there.person('Wim');
    const { crewId: copyId } = await bringInCrew(worker, archive);
    const [rig] = (await rigsOf(worker, copyId)).filter(({ name }) => name === 'Rig 0');
    const rigId = present(rig, 'the house rig').id;
    const [revision] = await worker.granted<readonly RigRevisionSummary[]>('revisions.list', { rigId });
    expect(revision).toMatchObject({ number: 1, note: 'As hung', by: 'Ona' });
    const { text } = await worker.request('GET', revisionPath(rigId, 1, 'rig'));
    expect(await sha256(text)).toBe(revision?.hash);
    await worker.granted('revisions.start', { rigId, number: 1, crewId: copyId, name: 'Next', kind: 'show' });
    await writeEdits(there, rigId, worker.userId, [{ kind: 'set-mode', type: 'Beam', mode: 'B', footprints: [3] }]);
    await worker.granted('revisions.freeze', { rigId, note: 'Later', accepted: NOTHING_ACCEPTED });
    const members = (await worker.granted<{ members: readonly { name: string }[] }>('crews.get', { crewId: copyId }))
      .members;
    expect(members.map(({ name }) => name)).toEqual(['Wim']);
    const type = (
      await worker.granted<readonly { id: string; maker: string }[]>('library.list', { crewId: copyId })
    ).find(({ maker }) => maker === 'Curlew');
    const details = await worker.granted<{ revisions: readonly { by: string }[] }>('library.get', {
      crewId: copyId,
      typeId: type?.id,
    });
    expect(details.revisions.map(({ by }) => by)).toEqual(['Ona', 'Ona']);
  });

  it('tells nothing that opens a door: no address, no password, no session, no token', async () => {
    const crewId = await newCrew(5);
    const { path } = await lead.granted<{ path: string }>('invitations.create', { crewId, role: 'lead' });
    const { prisma } = here.running.store;
    const users = await prisma.user.findMany({ include: { accounts: true, sessions: true } });
    const secrets = [
      path.slice('/join/'.length),
      ...(await prisma.invitation.findMany()).map(({ tokenHash }) => tokenHash),
      ...(await prisma.handover.findMany()).map(({ tokenHash }) => tokenHash),
      ...users.flatMap(({ email, accounts, sessions }) => [
        email,
        ...accounts.flatMap(({ password }) => password ?? []),
        ...sessions.map(({ token }) => token),
      ]),
    ];
    expect(secrets.length).toBeGreaterThan(10);
    const all = Object.values(partsOf(await takeOutCrew(here, lead, crewId))).map((bytes) =>
      Buffer.from(bytes).toString('latin1'),
    );
    expect(secrets.filter((secret) => all.some((text) => text.includes(secret)))).toEqual([]);
  });

  it('is refused, part by part, when any of them is changed, missing, added or swapped, and nothing comes in', async () => {
    const crewId = await newCrew(3);
    const parts = partsOf(await takeOutCrew(here, lead, crewId));
    const before = await crewsOf(there);
    const rng = seededRng(17);
    const refused = async (changed: Record<string, Uint8Array>, named: string) => {
      const { status, text } = await sendArchive(newcomer, zipSync(changed, { level: 0 }));
      expect([status, text], named).toEqual([422, expect.stringContaining(`“${named}”`)]);
      expect(JSON.parse(text).message).toMatch(/^\S.{10,}Nothing was brought in\..*\.$/);
    };
    for (const [name, bytes] of Object.entries(parts)) {
      const changed = Uint8Array.from(bytes);
      const at = rng.int(changed.length);
      changed[at] = (changed[at] ?? 0) ^ (1 << rng.int(8));
      await refused({ ...parts, [name]: changed }, name);
      const { [name]: _, ...rest } = parts;
      await refused(rest, name);
    }
    await refused({ ...parts, 'rigs/1/more.json': strToU8('{}') }, 'rigs/1/more.json');
    const [one, two] = ['rigs/1/log/1.bin', 'rigs/2/log/1.bin'];
    const swapped = { ...parts, [one]: parts[two] ?? new Uint8Array(), [two]: parts[one] ?? new Uint8Array() };
    await refused(swapped, one);
    expect(await crewsOf(there)).toEqual(before);
  }, 120_000);

  it('is refused when it was sealed anew over parts that say what cannot be, and what was half in is gone', async () => {
    const crewId = await newCrew(6);
    const parts = partsOf(await takeOutCrew(here, lead, crewId));
    const before = await crewsOf(there);
    const text = (name: string) => Buffer.from(parts[name] ?? new Uint8Array()).toString('utf8');
    const rig = JSON.parse(text('rigs/1/rig.json'));
    const log = JSON.parse(text('rigs/1/log/1.json'));
    const type = JSON.parse(text('types/1/type.json'));
    const forged: readonly (readonly [part: string, content: unknown])[] = [
      ['rigs/1/rig.json', { ...rig, head: rig.head + 1 }],
      ['rigs/1/rig.json', { ...rig, venueId: 'nowhere' }],
      ['rigs/1/rig.json', { ...rig, name: 'zero \u0000' }],
      ['rigs/1/rig.json', { ...rig, revisions: [{ ...rig.revisions[0], hash: '0'.repeat(64) }] }],
      ['rigs/1/rig.json', { ...rig, revisions: [{ ...rig.revisions[0], number: 2 }] }],
      [
        'rigs/1/log/1.json',
        { ...log, updates: log.updates.map(([, at, length]: unknown[]) => ['somebody', at, length]) },
      ],
      ['rigs/1/log/1.json', { ...log, from: 2 }],
      ['rigs/1/log/1.bin', Buffer.alloc(parts['rigs/1/log/1.bin']?.length ?? 0, 255)],
      ['rigs/1/revisions/1.json', '{"format":1}'],
      ['types/1/type.json', { ...type, revisions: type.revisions.slice(1) }],
      ['types/1/revisions/1.json', '{}'],
      ['crew.json', { ...JSON.parse(text('crew.json')), venues: [] }],
      ['people.json', []],
      ['audit/1.json', [{ kind: 'unheard-of' }]],
    ];
    for (const [part, content] of forged) {
      const bytes =
        content instanceof Uint8Array
          ? content
          : strToU8(typeof content === 'string' ? content : JSON.stringify(content));
      const { status, text: said } = await sendArchive(
        newcomer,
        resealed({ ...parts, [part]: Uint8Array.from(bytes) }),
      );
      expect([status, JSON.parse(said).code], `${part}: ${said}`).toEqual([422, expect.stringMatching(/^part-/)]);
      expect(await crewsOf(there), part).toEqual(before);
    }
    // The seal itself is no obstacle: the same parts, sealed anew, come in.
    expect((await sendArchive(await there.person('Ida'), resealed(parts))).status).toBe(200);
  }, 120_000);

  // Nothing of these reaches the store.
  if (kind === 'embedded')
    it('is refused as garbage, cut off, or a bomb, with a sentence', async () => {
      const crewId = await newCrew(7);
      const archive = await takeOutCrew(here, lead, crewId);
      const rng = seededRng(5);
      const before = await crewsOf(there);
      const bad: readonly Uint8Array[] = [
        new Uint8Array(),
        Uint8Array.from({ length: 50_000 }, () => rng.int(256)),
        archive.slice(0, archive.length >> 1),
        archive.slice(0, archive.length - 30),
        zipSync({ 'manifest.json': strToU8('{"format":2}') }),
        zipSync({ 'readme.txt': strToU8('hello') }),
        zipSync({ 'manifest.json': new Uint8Array(50_000_000) }),
        forgedZip('manifest.json', new Uint8Array(50_000_000), { size: 1000 }),
      ];
      for (const bytes of bad) {
        const { status, text } = await sendArchive(newcomer, bytes);
        expect(status).toBe(422);
        expect(JSON.parse(text).message).toMatch(/^\S.{10,}Nothing was brought in\..*\.$/);
      }
      expect(await crewsOf(there)).toEqual(before);
      expect(there.lines.filter((line) => line.includes(' trouble '))).toEqual([]);
    }, 120_000);

  if (kind === 'embedded')
    it('with any byte flipped comes in as it was or not at all', async () => {
      const crewId = await newCrew(8);
      const archive = await takeOutCrew(here, lead, crewId);
      const wanted = lastingUpToIds(archive);
      const rng = seededRng(23);
      const visitor = await there.person('Flip');
      let refused = 0;
      for (let round = 0; round < 40; round += 1) {
        const flipped = Uint8Array.from(archive);
        const at = rng.int(flipped.length);
        flipped[at] = (flipped[at] ?? 0) ^ (1 << rng.int(8));
        const { status, text } = await sendArchive(visitor, flipped);
        expect([200, 422], text).toContain(status);
        if (status === 422) refused += 1;
        else expect(lastingUpToIds(await takeOutCrew(there, visitor, JSON.parse(text).crewId))).toEqual(wanted);
      }
      expect(refused).toBeGreaterThan(20);
    }, 120_000);

  it('names nobody here as the author of what they did not write', async () => {
    const crewId = await newCrew(9);
    const parts = partsOf(await takeOutCrew(here, lead, crewId));
    const named = JSON.parse(Buffer.from(parts['people.json'] ?? new Uint8Array()).toString('utf8'));
    // Somebody of this installation, by another name.
    const forged = named.map(({ id, name }: { id: string; name: string }) => ({ id, name: `not ${name}` }));
    const stranger = await here.person('Sven');
    const { crewId: copyId } = await bringInCrew(
      stranger,
      resealed({ ...parts, 'people.json': strToU8(JSON.stringify(forged)) }),
    );
    const people = jsonOf(await takeOutCrew(here, stranger, copyId), 'people.json');
    const ids = new Set([lead.userId, editor.userId]);
    expect(people.filter(({ id }: { id: string }) => ids.has(id))).toEqual([]);
    expect(people.map(({ name }: { name: string }) => name).sort()).toEqual(['not Lena', 'not Ona']);
  });

  // On the store that people are told to keep such rigs in.
  if (kind === 'postgres')
    it('carries a rig of 20,000 units with a log of thousands of updates, while others go on editing', async () => {
      const { id: crewId } = await lead.granted<{ id: string }>('crews.create', { name: 'Large' });
      const { id: rigId } = await lead.granted<RigSummary>('rigs.create', { crewId, name: 'Large', kind: 'show' });
      await storeLargeLog(here, rigId, [lead.userId, editor.userId]);
      const archive = await takeOutCrew(here, lead, crewId);
      const worker = await there.person('Wim');
      const { id: own } = await worker.granted<{ id: string }>('crews.create', { name: 'Own' });
      const { id: small } = await worker.granted<RigSummary>('rigs.create', {
        crewId: own,
        name: 'Small',
        kind: 'show',
      });
      const order: string[] = [];
      const coming = bringInCrew(worker, archive).finally(() => order.push('archive'));
      await writeEdits(there, small, worker.userId, [{ kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] }]);
      order.push('edit');
      await coming;
      expect(order).toEqual(['edit', 'archive']);
      expect(lasting(await takeOutCrew(there, worker, crewId))).toEqual(lasting(archive));
      expect(hashOf(freezeRig(await rigOf(there, rigId)))).toBe(hashOf(freezeRig(await rigOf(here, rigId))));
      expect((await rigOf(there, rigId)).fixtures.size).toBe(LARGE_UNITS);
    }, 240_000);

  it('leaves nothing behind when the process dies half-way', async () => {
    const { store } = there.running;
    const before = await crewsOf(there);
    const now = Date.now();
    await noteStaged(store, 'half', new Date(now - HOUR - 1));
    await store.prisma.crew.create({ data: { id: 'half', name: 'Half' } });
    await store.prisma.rig.create({
      data: { id: 'half-rig', crewId: 'half', name: 'R', kind: 'show', head: 1n, removedAt: new Date(0) },
    });
    await store.prisma.rigUpdate.create({
      data: { rigId: 'half-rig', seq: 1n, author: 'a', at: new Date(), bytes: new Uint8Array(2) },
    });
    await sweepExpired({ store, clock: createFakeClock(now - 2) });
    expect(await store.prisma.rig.count({ where: { crewId: 'half' } })).toBe(1);
    await sweepExpired({ store, clock: createFakeClock(now) });
    expect(await crewsOf(there)).toEqual(before);
  });
});

/** Parts with a manifest that agrees with them, as somebody who wants to deceive would make it. */
function resealed(parts: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const manifest: ArchiveManifest = JSON.parse(
    Buffer.from(parts['manifest.json'] ?? new Uint8Array()).toString('utf8'),
  );
  const { seal: _, ...rest } = manifest;
  const own = manifest.parts.map(({ name }) => {
    const bytes = parts[name] ?? new Uint8Array();
    return { name, size: bytes.length, sha256: hashOfBytes(bytes) };
  });
  return zipSync({ ...parts, 'manifest.json': strToU8(writeManifest({ ...rest, parts: own })) });
}

const hashOfBytes = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Gives a rig its units in one update, and then thousands of updates of one cell each, as rows of its log. */
async function storeLargeLog({ running }: TestServer, rigId: string, authors: readonly string[]): Promise<void> {
  const { prisma } = running.store;
  const first = await prisma.rigUpdate.findFirstOrThrow({ where: { rigId } });
  const doc = new Y.Doc();
  Y.applyUpdate(doc, first.bytes);
  const updates: Uint8Array<ArrayBuffer>[] = [];
  doc.on('update', (update: Uint8Array) => updates.push(Uint8Array.from(update)));
  const units = Array.from({ length: LARGE_UNITS }, (_, nth): Edit => {
    const cells = { channel: nth + 1, position: `Bar ${nth % 40}`, unit: String(nth), type: 'Wash', mode: 'A' };
    return { kind: 'add-fixture', fixture: fixtureId(`u${nth}`), cells };
  });
  const edit = (edits: readonly Edit[]) => applyPlan(doc, { name: 'edit', edits }, 'test');
  edit(units);
  for (let nth = 0; nth < LARGE_UPDATES; nth += 1) {
    // Server and visitor share this thread: their timers must go on, or connections end unseen.
    if (nth % 250 === 0) await new Promise((resolve) => setImmediate(resolve));
    edit([{ kind: 'set-cell', fixture: fixtureId(`u${nth}`), field: 'position', value: `Truss ${nth % 7}` }]);
  }
  doc.destroy();
  const row = (bytes: Uint8Array<ArrayBuffer>, nth: number) => ({
    rigId,
    seq: BigInt(nth + 2),
    author: authors[nth % authors.length] ?? '',
    at: new Date(1_700_000_000_000 + nth),
    bytes,
  });
  const rows = updates.map(row);
  for (let from = 0; from < rows.length; from += 500)
    await prisma.rigUpdate.createMany({ data: rows.slice(from, from + 500) });
  await prisma.rig.update({ where: { id: rigId }, data: { head: BigInt(rows.length + 1) } });
}
