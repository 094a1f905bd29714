import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { proposalEdits, proposalLines } from '#engine/diff/proposal.ts';
import { restoreTasks } from '#engine/diff/restore.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { rigOf, writeEdits } from '#tests/support/write-edits.ts';
import { CAPS } from '#wire/caps.ts';
import type { ProposalsOfRig, ProposalToRead } from '#wire/proposals.ts';
import type { RigSummary } from '#wire/rigs.ts';

const unit = (name: string, address: number): Edit => ({
  kind: 'add-fixture',
  fixture: fixtureId(name),
  cells: { position: 'Bar 1', unit: name, type: 'Wash', mode: 'A', address },
});
const address = (name: string, value: number): Edit => ({
  kind: 'set-cell',
  fixture: fixtureId(name),
  field: 'address',
  value,
});
const mode: Edit = { kind: 'set-mode', type: 'Wash', mode: 'A', footprints: [4] };

describe.each(STORE_KINDS)('proposals to a house rig on the %s store', (kind) => {
  let server: TestServer;
  /** Who keeps the house, and who tours and reads along at the house. */
  let keeper: Visitor;
  let tourer: Visitor;
  let house: RigSummary;
  let show: RigSummary;
  let touringId: string;

  beforeAll(async () => {
    server = await startTestServer(kind);
    [keeper, tourer] = await Promise.all([server.person('Kit'), server.person('Tove')]);
    const { id: crewId } = await keeper.granted<{ id: string }>('crews.create', { name: 'Millrace house crew' });
    touringId = (await tourer.granted<{ id: string }>('crews.create', { name: 'Saltwind' })).id;
    house = await keeper.granted('rigs.create', { crewId, name: 'Millrace house rig', kind: 'house' });
    await writeEdits(server, house.id, keeper.userId, [mode, unit('a', 1), unit('b', 11), unit('c', 21)]);
    await keeper.granted('revisions.freeze', { rigId: house.id, note: '', accepted: { by: '', keys: [] } });
    // The tourer is let in to start from it, and shown out again: what is theirs is what they took along.
    const { path } = await keeper.granted<{ path: string }>('invitations.create', { crewId, role: 'reader' });
    await tourer.granted('invitations.accept', { token: path.split('/').at(-1) });
    show = await tourer.granted('revisions.start', {
      rigId: house.id,
      number: 1,
      crewId: touringId,
      name: 'Winter gala',
      kind: 'show',
    });
    await keeper.granted('crews.removeMember', { crewId, userId: tourer.userId });
  });
  afterAll(() => server.stop());

  const refusalOf = (text: string): string => JSON.parse(text).error.data.refusal;
  const propose = (input: object) =>
    tourer.call('proposals.make', {
      rigId: show.id,
      houseId: house.id,
      number: 1,
      words: 'It plays better so',
      edits: [address('a', 101)],
      ...input,
    });
  const listOf = (who: Visitor, rigId: string) => who.granted<ProposalsOfRig>('proposals.listForRig', { rigId });

  it('goes from the show to the house, is taken there, and the show hears of it', async () => {
    const record = await rigOf(server, house.id);
    await writeEdits(server, show.id, tourer.userId, [
      address('a', 101),
      address('b', 201),
      { kind: 'remove-fixture', fixture: fixtureId('c') },
      ...setCard('fault', 'x1', { unit: 'a', what: 'Does not strike' }),
    ]);
    const played = await rigOf(server, show.id);
    const stays = new Set(['a set-address', 'c hang']);
    const edits = proposalEdits(record, played, stays);
    expect((await propose({ edits })).status).toBe(200);
    // Meanwhile the house moves on.
    await writeEdits(server, house.id, keeper.userId, [
      { kind: 'set-cell', fixture: fixtureId('b'), field: 'colour', value: 'R26' },
    ]);
    const [received] = (await listOf(keeper, house.id)).received;
    expect(received).toMatchObject({
      state: 'open',
      fromRigName: 'Winter gala',
      fromCrewName: 'Saltwind',
      by: 'Tove',
      words: 'It plays better so',
      edits: 2,
      number: 1,
    });
    const proposalId = received?.id;
    const read = await keeper.granted<ProposalToRead>('proposals.get', { rigId: house.id, proposalId });
    const lines = proposalLines(record, await rigOf(server, house.id), read.edits as readonly Edit[]);
    expect(lines.map(({ task, fate }) => `${task.key}: ${fate}`)).toEqual(['a set-address: fits', 'c take-down: fits']);
    const taken = lines.flatMap(({ task }) => task.edits);
    await writeEdits(server, house.id, keeper.userId, taken);
    const decide = { rigId: house.id, proposalId, outcome: 'accepted', words: 'Agreed' };
    await keeper.granted('proposals.decide', decide);
    expect((await listOf(tourer, show.id)).made).toMatchObject([
      { id: proposalId, state: 'accepted', answer: 'Agreed' },
    ]);
    expect(refusalOf((await keeper.call('proposals.decide', decide)).text)).toBe('proposal-closed');
    const left = restoreTasks(played, await rigOf(server, house.id));
    expect(left.units.map(({ key }) => key)).toEqual(['b set-address', 'b colour']);
  });

  it('tells the show nothing of the house but its answer', async () => {
    const { text } = await tourer.call('proposals.listForRig', { rigId: show.id });
    for (const secret of [house.id, house.name, 'Millrace', 'Kit', keeper.userId]) expect(text).not.toContain(secret);
    for (const rigId of [house.id, 'no-such-rig']) {
      expect(refusalOf((await tourer.call('proposals.listForRig', { rigId })).text)).toBe('no-such-rig');
      const decide = { rigId, proposalId: 'x', outcome: 'declined', words: '' };
      expect(refusalOf((await tourer.call('proposals.decide', decide)).text)).toBe('no-such-rig');
    }
  });

  it('goes to no rig but the house that the show began as, and every other one answers alike', async () => {
    const other = await tourer.granted<RigSummary>('rigs.create', { crewId: touringId, name: 'Empty', kind: 'show' });
    const mine = await tourer.granted<RigSummary>('rigs.create', { crewId: touringId, name: 'Mine', kind: 'house' });
    const answers = await Promise.all([
      propose({ rigId: other.id }),
      propose({ houseId: mine.id }),
      propose({ houseId: 'no-such-rig' }),
      propose({ number: 7 }),
    ]);
    expect(answers.map(({ text }) => refusalOf(text))).toEqual(Array(4).fill('no-house-rig'));
    expect(new Set(answers.map(({ text }) => text)).size).toBe(1);
  });

  it('believes no rig that only says where it came from', async () => {
    const forged = await tourer.granted<RigSummary>('rigs.create', { crewId: touringId, name: 'Forged', kind: 'show' });
    const { prisma } = server.running.store;
    const from = { ...show.startedFrom, hash: '0'.repeat(64), way: 'file' };
    await prisma.rig.update({ where: { id: forged.id }, data: { startedFrom: from } });
    expect(refusalOf((await propose({ rigId: forged.id })).text)).toBe('no-house-rig');
  });

  it('goes to the house also from a show that began as the show', async () => {
    await tourer.granted('revisions.freeze', { rigId: show.id, note: '', accepted: { by: '', keys: [] } });
    const next = await tourer.granted<RigSummary>('revisions.start', {
      rigId: show.id,
      number: 1,
      crewId: touringId,
      name: 'Spring gala',
      kind: 'show',
    });
    const answer = await propose({ rigId: next.id });
    expect(answer.status).toBe(200);
    const { id } = JSON.parse(answer.text).result.data;
    // The show it came by is no way to it.
    expect(refusalOf((await tourer.call('proposals.withdraw', { rigId: show.id, proposalId: id })).text)).toBe(
      'no-such-proposal',
    );
    await tourer.granted('proposals.withdraw', { rigId: next.id, proposalId: id });
    expect(refusalOf((await tourer.call('proposals.withdraw', { rigId: next.id, proposalId: id })).text)).toBe(
      'proposal-closed',
    );
    const decide = { rigId: house.id, proposalId: id, outcome: 'accepted', words: '' };
    expect(refusalOf((await keeper.call('proposals.decide', decide)).text)).toBe('proposal-closed');
  });

  it('takes nothing that is no edit of a house, and no more than it may', async () => {
    const bad = [
      [{ kind: 'set-cell', fixture: 'a', field: 'nothing', value: 1 }],
      [{ kind: 'set-cell', fixture: 'a/b', field: 'address', value: 1 }],
      [null],
      setCard('fault', 'x1', { what: 'Broken' }),
      setCard('tick', 'x1', { state: 'done' }),
    ];
    for (const edits of bad)
      expect(refusalOf((await propose({ edits })).text), JSON.stringify(edits)).toBe('proposal-unreadable');
    for (const edits of [[], Array(CAPS.proposalEdits + 1).fill(0)])
      expect((await propose({ edits })).status).toBe(400);
    const many = await Promise.all(Array.from({ length: CAPS.openProposalsPerShow + 3 }, () => propose({})));
    expect(many.filter(({ status }) => status === 200)).toHaveLength(CAPS.openProposalsPerShow);
    expect(many.flatMap(({ status, text }) => (status === 200 ? [] : [refusalOf(text)]))).toEqual(
      Array(3).fill('too-many-proposals'),
    );
  });

  it('is written down on both sides, each with its own', async () => {
    const { prisma } = server.running.store;
    const entries = async (crewId: string) =>
      (
        await prisma.auditEntry.findMany({
          where: { crewId, kind: { startsWith: 'proposal-' } },
          orderBy: { id: 'asc' },
        })
      )
        .slice(0, 4)
        .map(({ kind: what, byName, rigId }) => `${what} ${byName} ${rigId === house.id ? 'house' : 'show'}`);
    expect(await entries(house.crewId)).toEqual([
      'proposal-made Tove house',
      'proposal-accepted Kit house',
      'proposal-made Tove house',
      'proposal-withdrawn Tove house',
    ]);
    expect((await entries(touringId)).slice(0, 3)).toEqual([
      'proposal-made Tove show',
      'proposal-made Tove show',
      'proposal-withdrawn Tove show',
    ]);
  });

  it('finds no house that is removed', async () => {
    await keeper.granted('rigs.remove', { rigId: house.id });
    expect(refusalOf((await propose({})).text)).toBe('no-house-rig');
    expect((await listOf(tourer, show.id)).made.length).toBeGreaterThan(0);
  });
});
