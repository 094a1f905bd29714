import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Answer, Visitor } from '#tests/support/visitor.ts';
import type { CrewDetail, CrewSummary } from '#wire/crews.ts';
import type { InvitationLook, NewInvitation } from '#wire/invitations.ts';
import type { RigSummary } from '#wire/rigs.ts';
import type { Role } from '#wire/role.ts';
import type { VenueSummary } from '#wire/venues.ts';

const refusalOf = ({ text }: Answer): string => JSON.parse(text).error?.data.refusal ?? 'granted';
const tokenOf = ({ path }: NewInvitation) => path.slice('/join/'.length);

describe.each(STORE_KINDS)('crews, venues and rigs on the %s store', (kind) => {
  let server: TestServer;
  let ada: Visitor;
  let bo: Visitor;
  let cy: Visitor;
  beforeAll(async () => {
    server = await startTestServer(kind);
    ada = await server.person('Ada');
    bo = await server.person('Bo');
    cy = await server.person('Cy');
  });
  afterAll(() => server.stop());

  const crew = async (name = 'Night crew') => (await ada.granted<CrewSummary>('crews.create', { name })).id;
  const invite = (crewId: string, role: Role) => ada.granted<NewInvitation>('invitations.create', { crewId, role });
  const join = async (visitor: Visitor, crewId: string, role: Role) =>
    visitor.granted('invitations.accept', { token: tokenOf(await invite(crewId, role)) });
  const look = (visitor: Visitor, token: string) => visitor.granted<InvitationLook>('invitations.look', { token });

  it('lets a person in by a link: shown first, then used up, with the role it carries', async () => {
    const crewId = await crew('Ünïted  riggers ');
    const link = await invite(crewId, 'editor');
    const token = tokenOf(link);
    const open = { state: 'open', crewName: 'Ünïted riggers', role: 'editor', member: false };
    expect(await look(server.visitor(), token)).toEqual(open);
    expect(await look(ada, token)).toEqual({ ...open, member: true });
    // The lead's own visit does not use it up.
    expect(await ada.granted('invitations.accept', { token })).toEqual({ crewId });
    expect(await bo.granted('invitations.accept', { token })).toEqual({ crewId });
    expect(await look(cy, token)).toEqual({ state: 'used' });
    expect(refusalOf(await cy.call('invitations.accept', { token }))).toBe('invitation-used');
    // Whoever is in already may follow the used link without harm.
    expect(await bo.granted('invitations.accept', { token })).toEqual({ crewId });
    const seen = await bo.granted<CrewDetail>('crews.get', { crewId });
    expect(seen.members.map(({ name, role }) => [name, role])).toEqual([
      ['Ada', 'lead'],
      ['Bo', 'editor'],
    ]);
    expect(seen.invitations).toEqual([]);
  });

  it('lets exactly one of many in who follow one link at the same moment', async () => {
    const crewId = await crew();
    const token = tokenOf(await invite(crewId, 'reader'));
    const people = await Promise.all(Array.from({ length: 5 }, (_, n) => server.person(`Racer ${n}`)));
    const answers = await Promise.all(people.map((person) => person.call('invitations.accept', { token })));
    expect(answers.map(refusalOf).sort()).toEqual(['granted', ...Array(4).fill('invitation-used')]);
    expect((await ada.granted<CrewDetail>('crews.get', { crewId })).members).toHaveLength(2);
  });

  it('ends a link that is revoked, has expired, or whose maker is no lead any more', async () => {
    const crewId = await crew();
    const revoked = await invite(crewId, 'reader');
    await ada.granted('invitations.revoke', { crewId, invitationId: revoked.id });
    expect(await look(bo, tokenOf(revoked))).toEqual({ state: 'gone' });
    expect(refusalOf(await bo.call('invitations.accept', { token: tokenOf(revoked) }))).toBe('invitation-gone');
    expect(refusalOf(await ada.call('invitations.revoke', { crewId, invitationId: revoked.id }))).toBe(
      'no-such-invitation',
    );

    const expired = await invite(crewId, 'reader');
    await server.running.store.prisma.invitation.update({
      where: { id: expired.id },
      data: { expiresAt: new Date(0) },
    });
    expect(await look(bo, tokenOf(expired))).toEqual({ state: 'expired' });
    expect(refusalOf(await bo.call('invitations.accept', { token: tokenOf(expired) }))).toBe('invitation-expired');

    await join(bo, crewId, 'lead');
    const ofBo = await bo.granted<NewInvitation>('invitations.create', { crewId, role: 'lead' });
    await ada.granted('crews.setRole', { crewId, userId: bo.userId, role: 'reader' });
    expect(refusalOf(await cy.call('invitations.accept', { token: tokenOf(ofBo) }))).toBe('invitation-gone');
  });

  it('keeps a lead in every crew, also when two step down at once', async () => {
    const crewId = await crew();
    expect(refusalOf(await ada.call('crews.leave', { crewId }))).toBe('last-lead');
    const demote = (who: Visitor) => ada.call('crews.setRole', { crewId, userId: who.userId, role: 'reader' });
    expect(refusalOf(await demote(ada))).toBe('last-lead');
    await join(bo, crewId, 'lead');
    const both = await Promise.all([ada.call('crews.leave', { crewId }), bo.call('crews.leave', { crewId })]);
    expect(both.map(refusalOf).sort()).toEqual(['granted', 'last-lead']);
    const leads = await server.running.store.prisma.membership.count({ where: { crewId, role: 'lead' } });
    expect(leads).toBe(1);
  });

  it('says so when a member is gone already', async () => {
    const crewId = await crew();
    const userId = cy.userId;
    expect(refusalOf(await ada.call('crews.removeMember', { crewId, userId }))).toBe('no-such-member');
    expect(refusalOf(await ada.call('crews.setRole', { crewId, userId, role: 'lead' }))).toBe('no-such-member');
  });

  it('keeps the names of a crew\u2019s venues apart, and rigs at its own venues', async () => {
    const [crewId, otherCrew] = [await crew('A'), await crew('B')];
    const venue = await ada.granted<VenueSummary>('venues.create', { crewId, name: 'Old mill' });
    expect(venue).toEqual({ id: venue.id, name: 'Old mill', crewId, crewName: 'A' });
    expect(refusalOf(await ada.call('venues.create', { crewId, name: ' Old  mill' }))).toBe('name-taken');
    const second = await ada.granted<VenueSummary>('venues.create', { crewId, name: 'New mill' });
    expect(refusalOf(await ada.call('venues.rename', { venueId: second.id, name: 'Old mill' }))).toBe('name-taken');
    const there = await ada.granted<VenueSummary>('venues.create', { crewId: otherCrew, name: 'Old mill' });

    const rig = { crewId, name: 'House', kind: 'house' };
    expect(refusalOf(await ada.call('rigs.create', { ...rig, venueId: there.id }))).toBe('no-such-venue');
    const made = await ada.granted<RigSummary>('rigs.create', { ...rig, venueId: venue.id });
    expect(made).toMatchObject({ name: 'House', kind: 'house', venueName: 'Old mill', crewName: 'A', role: 'lead' });
    expect(await ada.granted('rigs.get', { rigId: made.id })).toEqual(made);
    expect(Date.parse(made.changedAt)).toBeGreaterThan(Date.now() - 60_000);
  });

  it('takes a removed rig off every list, for good, and keeps its log', async () => {
    const crewId = await crew();
    const { id: rigId } = await ada.granted<RigSummary>('rigs.create', { crewId, name: 'Gone', kind: 'show' });
    await ada.granted('rigs.remove', { rigId });
    expect(refusalOf(await ada.call('rigs.get', { rigId }))).toBe('no-such-rig');
    expect(refusalOf(await ada.call('rigs.remove', { rigId }))).toBe('no-such-rig');
    expect((await ada.granted<RigSummary[]>('rigs.list')).some((rig) => rig.id === rigId)).toBe(false);
    expect(await server.running.store.prisma.rigUpdate.count({ where: { rigId } })).toBe(1);
    const sheet = await ada.request('GET', `/api/rigs/${rigId}/sheets/patch.csv`);
    expect(sheet.status).toBe(404);
  });

  it('remembers how a crew reads a list, whatever JSON that is', async () => {
    const crewId = await crew();
    const recall = (key: string) => ada.granted('listMappings.recall', { crewId, key });
    expect(await recall('a')).toBeNull();
    for (const mapping of [{ columns: { '0': 'channel' } }, [1, 'x', null], 'text', 0, false, null]) {
      await ada.granted('listMappings.remember', { crewId, key: 'a', mapping });
      expect(await recall('a')).toEqual({ mapping });
    }
    const huge = await ada.call('listMappings.remember', { crewId, key: 'a', mapping: 'x'.repeat(30_000) });
    expect(huge.status).toBe(400);
    expect(await recall('a')).toEqual({ mapping: null });
  });

  it('gives a sheet by address, with and without the mark of UTF-8', async () => {
    const crewId = await crew();
    const { id: rigId } = await ada.granted<RigSummary>('rigs.create', { crewId, name: 'Café', kind: 'show' });
    for (const sheet of [
      'patch',
      'channels',
      'universes',
      'universe-slots',
      'channel-slots',
      'circuits',
      'positions',
      'findings',
      'runs',
    ]) {
      const plain = await ada.request('GET', `/api/rigs/${rigId}/sheets/${sheet}.csv`);
      expect([plain.status, plain.headers.get('content-type')]).toEqual([200, 'text/csv; charset=utf-8']);
      expect(plain.text).toContain('Café');
      expect(plain.text.endsWith('\r\n')).toBe(true);
      expect(plain.headers.get('content-disposition')).toMatch(/^attachment; filename="[a-z0-9-]+\.csv"$/);
    }
    const raw = await fetch(`${server.url}/api/rigs/${rigId}/sheets/patch.csv?bom=1`, {
      headers: { cookie: ada.cookie },
    });
    expect([...new Uint8Array(await raw.arrayBuffer()).slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect((await ada.request('GET', `/api/rigs/${rigId}/sheets/secret.csv`)).status).toBe(404);
    const head = await ada.request('HEAD', `/api/rigs/${rigId}/sheets/patch.csv`);
    expect([head.status, head.text]).toEqual([200, '']);
  });
});
