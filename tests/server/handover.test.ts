import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assert } from '#base/assert.ts';
import { getRow } from '#base/table.ts';
import { thawRig } from '#document/frozen/frozen-rig.ts';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Answer, Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import { type HandoverLook, type HandoverSummary, handoverPath, type NewHandover } from '#wire/handovers.ts';
import { revisionPath } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';

const mode: Edit = { kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] };
const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { channel: address, position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address },
});
const NOTHING = { by: '', keys: [] };

describe.each(STORE_KINDS)('handovers on the %s store', (kind) => {
  let server: TestServer;
  let giver: Visitor;
  let taker: Visitor;
  let stranger: Visitor;
  let giverCrew: string;
  let takerCrew: string;
  beforeAll(async () => {
    server = await startTestServer(kind);
    giver = await server.person('Gil');
    taker = await server.person('Tess');
    stranger = await server.person('Stan');
    giverCrew = (await giver.granted<{ id: string }>('crews.create', { name: 'Lampwrights' })).id;
    takerCrew = (await taker.granted<{ id: string }>('crews.create', { name: 'Night Shift' })).id;
    await stranger.granted('crews.create', { name: 'Others' });
  });
  afterAll(() => server.stop());

  const refusalOf = ({ text }: Answer): string => JSON.parse(text).error?.data.refusal ?? 'ok';
  const tokenOf = ({ path }: NewHandover): string => path.replace(/^\/handover\//, '');
  const look = (who: Visitor, token: string) => who.granted<HandoverLook>('handovers.look', { token });
  const accept = (who: Visitor, token: string, crewId: string) =>
    who.call('handovers.accept', { token, crewId, name: 'Ours now', kind: 'show', words: 'With thanks' });
  const ofCrew = (who: Visitor, crewId: string) =>
    who.granted<readonly HandoverSummary[]>('handovers.ofCrew', { crewId });
  const kindsOf = async (crewId: string): Promise<readonly string[]> => {
    const rows = await server.running.store.prisma.auditEntry.findMany({ where: { crewId }, orderBy: { id: 'asc' } });
    return rows.map((row) => row.kind);
  };

  const newRig = async (name = 'Winter show'): Promise<string> => {
    const { id } = await giver.granted<RigSummary>('rigs.create', { crewId: giverCrew, name, kind: 'show' });
    await writeEdits(server, id, giver.userId, [mode, unit('a', 1), unit('b', 11)]);
    await giver.granted('revisions.freeze', { rigId: id, note: 'As hung', accepted: NOTHING });
    return id;
  };
  const offer = async (rigId: string, number = 1): Promise<NewHandover> =>
    giver.granted('handovers.offer', { rigId, number, words: 'The dimmer at 12 sticks.' });
  const expectNothingThere = async (who: Visitor, token: string) => {
    const never = await who.call('handovers.look', { token: 'neverwas' });
    expect(refusalOf(never)).toBe('no-such-handover');
    const answer = await who.call('handovers.look', { token });
    expect([answer.status, answer.text]).toEqual([never.status, never.text]);
    for (const part of ['rig', 'findings'] as const) {
      const gone = await who.request('GET', handoverPath('neverwas', part));
      const bytes = await who.request('GET', handoverPath(token, part));
      expect([bytes.status, bytes.text]).toEqual([404, gone.text]);
    }
    expect(refusalOf(await accept(taker, token, takerCrew))).toBe('no-such-handover');
    expect(refusalOf(await who.call('handovers.decline', { token, words: '' }))).toBe('no-such-handover');
  };

  it('tells whoever holds the link what is offered, gives exactly that revision, and nothing later', async () => {
    const rigId = await newRig();
    const token = tokenOf(await offer(rigId));
    const own = await giver.request('GET', revisionPath(rigId, 1, 'rig'));
    await writeEdits(server, rigId, giver.userId, [unit('c', 21)]);
    await giver.granted('revisions.freeze', { rigId, note: 'Later', accepted: NOTHING });
    const seen = await look(taker, token);
    expect(seen).toMatchObject({
      crewName: 'Lampwrights',
      rigName: 'Winter show',
      number: 1,
      note: 'As hung',
      units: 2,
      words: 'The dimmer at 12 sticks.',
      by: 'Gil',
      lastHad: [],
      receivedId: null,
      giverId: null,
    });
    expect(JSON.stringify(seen)).not.toContain(rigId);
    expect((await taker.request('GET', handoverPath(token, 'rig'))).text).toBe(own.text);
    const findings = await giver.request('GET', revisionPath(rigId, 1, 'findings'));
    expect((await taker.request('GET', handoverPath(token, 'findings'))).text).toBe(findings.text);
    expect((await taker.request('GET', handoverPath(token, 'content' as 'rig'))).status).toBe(404);
    // The link is of that revision alone: the rig itself stays closed.
    expect((await taker.request('GET', revisionPath(rigId, 1, 'rig'))).status).toBe(404);
    expect((await taker.request('GET', revisionPath(rigId, 2, 'rig'))).status).toBe(404);
    expect(refusalOf(await taker.call('rigs.get', { rigId }))).toBe('no-such-rig');
    expect((await server.visitor().request('GET', handoverPath(token, 'rig'))).status).toBe(404);
    expect(refusalOf(await server.visitor().call('handovers.look', { token }))).toBe('signed-out');
  });

  it('makes a rig of the receiving crew, which goes its own way, and both keep who, when and what was said', async () => {
    const rigId = await newRig();
    const token = tokenOf(await offer(rigId));
    const { text: offered } = await giver.request('GET', revisionPath(rigId, 1, 'rig'));
    await writeEdits(server, rigId, giver.userId, [unit('later', 31)]);
    const answer = await accept(taker, token, takerCrew);
    expect(answer.status).toBe(200);
    const rig: RigSummary = JSON.parse(answer.text).result.data;
    expect(rig).toMatchObject({ name: 'Ours now', crewId: takerCrew });
    expect(rig.startedFrom).toMatchObject({ rigId, crewName: 'Lampwrights', number: 1, way: 'handover' });
    expect((await taker.request('GET', revisionPath(rig.id, 1, 'rig'))).text).toBe(offered);
    const thawed = thawRig(offered);
    assert(thawed.ok, 'the offered rig can be read');
    expect(diffEdits(diffRigs(await rigOf(server, rig.id), thawed.value))).toEqual([]);
    // Each edits their own from now on.
    await writeEdits(server, rig.id, taker.userId, [unit('ours', 41)]);
    expect((await rigOf(server, rig.id)).fixtures.size).toBe(3);
    expect(getRow((await rigOf(server, rigId)).fixtures, fixtureId('ours'))).toBeUndefined();
    expect(refusalOf(await giver.call('rigs.get', { rigId: rig.id }))).toBe('no-such-rig');
    expect(refusalOf(await taker.call('rigs.get', { rigId }))).toBe('no-such-rig');

    const [given] = (await ofCrew(giver, giverCrew)).filter((each) => each.rigId === rigId);
    const said = { state: 'accepted', answer: 'With thanks', decidedBy: 'Tess', toCrewName: 'Night Shift' };
    expect(given).toMatchObject({ ...said, way: 'given', receivedId: null });
    const [received] = (await ofCrew(taker, takerCrew)).filter((each) => each.rigId === rigId);
    expect(received).toMatchObject({ ...said, way: 'received', receivedId: rig.id, crewName: 'Lampwrights' });
    expect(await kindsOf(giverCrew)).toContain('handover-accepted');
    expect(await kindsOf(takerCrew)).toContain('handover-received');
    // Used up: for the crew that took it the link leads to their rig, for all others nowhere.
    expect(await look(taker, token)).toMatchObject({ receivedId: rig.id });
    await expectNothingThere(stranger, token);
    await expectNothingThere(giver, token);
  });

  it('lets one of several who accept at once have it', async () => {
    const rigId = await newRig();
    const token = tokenOf(await offer(rigId));
    const before = (await taker.granted<RigSummary[]>('rigs.list')).length;
    const answers = await Promise.all([1, 2, 3, 4].map(() => accept(taker, token, takerCrew)));
    expect(answers.map(refusalOf).sort()).toEqual(['no-such-handover', 'no-such-handover', 'no-such-handover', 'ok']);
    expect(await taker.granted<RigSummary[]>('rigs.list')).toHaveLength(before + 1);
  });

  it('has one outcome when it is accepted and taken back at once', async () => {
    for (let round = 0; round < 6; round++) {
      const rigId = await newRig();
      const made = await offer(rigId);
      const [taken, back] = await Promise.all([
        accept(taker, tokenOf(made), takerCrew),
        giver.call('handovers.withdraw', { rigId, handoverId: made.id }),
      ]);
      const [one] = await giver.granted<readonly HandoverSummary[]>('handovers.ofRig', { rigId });
      const outcome = [refusalOf(taken), refusalOf(back), one?.state].join(' ');
      expect(['ok handover-closed accepted', 'no-such-handover ok withdrawn']).toContain(outcome);
    }
  });

  it('shows nothing of an offer that was taken back', async () => {
    const rigId = await newRig();
    const made = await offer(rigId);
    expect(refusalOf(await taker.call('handovers.withdraw', { rigId, handoverId: made.id }))).toBe('no-such-rig');
    await giver.granted('handovers.withdraw', { rigId, handoverId: made.id });
    await expectNothingThere(taker, tokenOf(made));
    expect(refusalOf(await giver.call('handovers.withdraw', { rigId, handoverId: made.id }))).toBe('handover-closed');
    expect(await kindsOf(giverCrew)).toContain('handover-withdrawn');
  });

  it('shows nothing of an offer that was declined, and keeps the words for both', async () => {
    const rigId = await newRig('Declined show');
    const token = tokenOf(await offer(rigId));
    await taker.granted('handovers.decline', { token, words: 'We bring our own.', crewId: takerCrew });
    await expectNothingThere(taker, token);
    const said = { state: 'declined', answer: 'We bring our own.', decidedBy: 'Tess', toCrewName: 'Night Shift' };
    expect((await ofCrew(giver, giverCrew)).find((each) => each.rigId === rigId)).toMatchObject(said);
    expect((await ofCrew(taker, takerCrew)).find((each) => each.rigId === rigId)).toMatchObject(said);
    expect(await kindsOf(giverCrew)).toContain('handover-declined');
    expect(await kindsOf(takerCrew)).toContain('handover-declined');
  });

  it('shows nothing of an offer that was left too long, or whose rig was removed', async () => {
    const rigId = await newRig();
    const made = await offer(rigId);
    const { prisma } = server.running.store;
    await prisma.handover.update({ where: { id: made.id }, data: { expiresAt: new Date(Date.now() - 1000) } });
    await expectNothingThere(taker, tokenOf(made));
    const [one] = await giver.granted<readonly HandoverSummary[]>('handovers.ofRig', { rigId });
    expect(one?.state).toBe('expired');
    const other = await offer(rigId);
    await giver.granted('rigs.remove', { rigId });
    await expectNothingThere(taker, tokenOf(other));
  });

  it('asks for a crew in which one may make rigs, and for another than the giver’s', async () => {
    const rigId = await newRig();
    const token = tokenOf(await offer(rigId));
    expect(refusalOf(await accept(taker, token, giverCrew))).toBe('no-such-crew');
    expect(refusalOf(await accept(giver, token, giverCrew))).toBe('handover-own');
    const reader = await server.person('Rea');
    const { prisma } = server.running.store;
    await prisma.membership.create({ data: { crewId: takerCrew, userId: reader.userId, role: 'reader' } });
    expect(refusalOf(await accept(reader, token, takerCrew))).toBe('role-too-low');
    const decline = { token, words: '', crewId: takerCrew };
    expect(refusalOf(await reader.call('handovers.decline', decline))).toBe('role-too-low');
    const venue = await giver.granted<{ id: string }>('venues.create', { crewId: giverCrew, name: `Hall ${token}` });
    const there = { token, crewId: takerCrew, name: 'x', kind: 'house', words: '', venueId: venue.id };
    expect(refusalOf(await taker.call('handovers.accept', there))).toBe('no-such-venue');
    expect((await look(taker, token)).receivedId).toBeNull();
    expect(refusalOf(await giver.call('handovers.offer', { rigId, number: 7, words: '' }))).toBe(
      'no-such-rig-revision',
    );
    expect((await giver.call('handovers.offer', { rigId, number: 1, words: 'a\0b' })).status).toBe(400);
  });

  it('knows what each crew last had of the rig, also when it comes back', async () => {
    const rigId = await newRig('Season rig');
    const first = JSON.parse((await accept(taker, tokenOf(await offer(rigId)), takerCrew)).text).result.data;
    await writeEdits(server, rigId, giver.userId, [unit('c', 21)]);
    await giver.granted('revisions.freeze', { rigId, note: 'Later', accepted: NOTHING });
    const second = tokenOf(await offer(rigId, 2));
    expect((await look(taker, second)).lastHad).toMatchObject([{ crewId: takerCrew, rigId: first.id, number: 1 }]);
    expect((await look(stranger, second)).lastHad).toEqual([]);
    const newer = JSON.parse((await accept(taker, second, takerCrew)).text).result.data;
    const third = tokenOf(await offer(rigId, 2));
    expect((await look(taker, third)).lastHad).toMatchObject([{ rigId: newer.id, number: 1 }]);
    // A show that the giver starts from the same rig is of the same line.
    const show = { rigId, number: 2, crewId: giverCrew, name: 'Tour', kind: 'show' };
    const started = await giver.granted<RigSummary>('revisions.start', show);
    const tour = tokenOf(await offer(started.id));
    expect((await look(taker, tour)).lastHad).toMatchObject([{ rigId: newer.id, number: 1 }]);
    // And back again: the giver last had the revision of their own that the taker's rig began as.
    await writeEdits(server, newer.id, taker.userId, [unit('d', 31)]);
    await taker.granted('revisions.freeze', { rigId: newer.id, note: 'Back', accepted: NOTHING });
    const words = { rigId: newer.id, number: 2, words: 'Back to you' };
    const back = tokenOf(await taker.granted<NewHandover>('handovers.offer', words));
    expect((await look(giver, back)).lastHad).toMatchObject([{ crewId: giverCrew, rigId, number: 2 }]);
  });
});
