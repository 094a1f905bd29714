import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STORE_KINDS } from '#tests/support/store.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import type { AuditLine, AuditPage, AuditPerson } from '#wire/audit.ts';
import { CAPS } from '#wire/caps.ts';
import type { CrewSummary } from '#wire/crews.ts';
import type { NewInvitation } from '#wire/invitations.ts';
import type { RigSummary } from '#wire/rigs.ts';

describe.each(STORE_KINDS)('the audit of a crew on the %s store', (kind) => {
  let server: TestServer;
  let lead: Visitor;
  let member: Visitor;
  beforeAll(async () => {
    server = await startTestServer(kind);
    lead = await server.person('Lena');
    member = await server.person('Mirko');
  });
  afterAll(() => server.stop());

  const newCrew = async (name: string): Promise<string> =>
    (await lead.granted<CrewSummary>('crews.create', { name })).id;
  const page = (crewId: string, asked: object = {}) => lead.granted<AuditPage>('audit.list', { crewId, ...asked });
  const said = ({ kind: what, by, what: { crew, was, role, person, rig, sheet } }: AuditLine) =>
    [what, by, crew, was, role, person, rig, sheet].filter((part) => part !== undefined).join(' ');
  const invite = async (crewId: string, role: string): Promise<NewInvitation> =>
    lead.granted<NewInvitation>('invitations.create', { crewId, role });
  const tokenOf = ({ path }: NewInvitation) => path.slice('/join/'.length);

  it('says who did what with the people of a crew, the newest first', async () => {
    const crewId = await newCrew('Lampwrights');
    await lead.granted('crews.rename', { crewId, name: 'Wickers' });
    await lead.granted('crews.rename', { crewId, name: 'Wickers' });
    const unused = await invite(crewId, 'reader');
    await lead.granted('invitations.revoke', { crewId, invitationId: unused.id });
    const link = await invite(crewId, 'editor');
    await member.granted('invitations.accept', { token: tokenOf(link) });
    await lead.granted('crews.setRole', { crewId, userId: member.userId, role: 'lead' });
    await member.granted('invitations.create', { crewId, role: 'editor' });
    await lead.granted('crews.setRole', { crewId, userId: member.userId, role: 'reader' });
    await lead.granted('crews.removeMember', { crewId, userId: member.userId });
    await member.granted('invitations.accept', { token: tokenOf(await invite(crewId, 'lead')) });
    await member.granted('crews.leave', { crewId });
    expect((await page(crewId)).lines.map(said).reverse()).toEqual([
      'crew-made Lena Lampwrights',
      'crew-renamed Lena Wickers Lampwrights',
      'invitation-made Lena reader',
      'invitation-withdrawn Lena reader',
      'invitation-made Lena editor',
      'invitation-used Mirko editor',
      'role-changed Lena editor lead Mirko',
      'invitation-made Mirko editor',
      'role-changed Lena lead reader Mirko',
      'invitation-withdrawn Lena editor',
      'member-removed Lena reader Mirko',
      'invitation-made Lena lead',
      'invitation-used Mirko lead',
      'member-left Mirko lead Mirko',
    ]);
  });

  it('says what was done with rigs, and which sheets and types left', async () => {
    const crewId = await newCrew('Lampwrights');
    const { id: rigId } = await lead.granted<RigSummary>('rigs.create', { crewId, name: 'House', kind: 'house' });
    await lead.granted('rigs.rename', { rigId, name: 'Playhouse' });
    await lead.request('GET', `/api/rigs/${rigId}/sheets/patch.csv`);
    await lead.request('GET', `/api/rigs/${rigId}/sheets/no-such.csv`);
    await lead.request('GET', `/api/crews/${crewId}/types/built-in-1/r0.gdtf`);
    const { lines } = await page(crewId);
    expect(lines.map(said).reverse()).toEqual([
      'crew-made Lena Lampwrights',
      'rig-made Lena House',
      'rig-renamed Lena House Playhouse',
      'sheet-out Lena Playhouse patch',
      'type-out Lena',
    ]);
    expect(lines[0]?.what.type).not.toBe('');
    expect(lines[1]?.rigId).toBe(rigId);
  });

  it('keeps nothing of what was refused', async () => {
    const crewId = await newCrew('Lampwrights');
    await lead.call('crews.leave', { crewId });
    await lead.call('crews.setRole', { crewId, userId: lead.userId, role: 'reader' });
    await lead.call('invitations.revoke', { crewId, invitationId: 'none' });
    await lead.call('library.remove', { crewId, typeId: 'none' });
    expect((await page(crewId)).lines.map(({ kind: what }) => what)).toEqual(['crew-made']);
  });

  it('is asked for page by page, without a gap, by kind and by person', async () => {
    const crewId = await newCrew('Lampwrights');
    const at = new Date();
    const entry = { crewId, at, rigId: null, what: {} };
    await server.running.store.prisma.auditEntry.createMany({
      data: Array.from({ length: CAPS.auditPage * 2 }, (_, nth) => ({
        ...entry,
        ...(nth % 3 === 0
          ? { by: 'm', byName: 'Mirko', kind: 'frozen' }
          : { by: 'o', byName: 'Ona', kind: 'sheet-out' }),
      })),
    });
    const read = async (asked: object): Promise<readonly AuditLine[]> => {
      const lines: AuditLine[] = [];
      let before: number | null = null;
      do {
        const next: AuditPage = await page(crewId, { ...asked, cursor: before });
        expect(next.lines.length).toBeLessThanOrEqual(CAPS.auditPage);
        lines.push(...next.lines);
        before = next.before;
      } while (before !== null);
      return lines;
    };
    const all = await read({});
    expect(all).toHaveLength(CAPS.auditPage * 2 + 1);
    expect(all.map(({ id }) => id)).toEqual(all.map(({ id }) => id).toSorted((a, b) => b - a));
    expect(await read({ kind: 'frozen' })).toEqual(all.filter(({ kind: what }) => what === 'frozen'));
    expect(await read({ by: 'o' })).toEqual(all.filter(({ by }) => by === 'Ona'));
    expect(await read({ by: 'o', kind: 'frozen' })).toEqual([]);
    expect((await lead.granted<readonly AuditPerson[]>('audit.people', { crewId })).map(({ name }) => name)).toEqual([
      'Lena',
      'Mirko',
      'Ona',
    ]);
  });

  it('never changes, whoever asks the store', async () => {
    const { sql } = server.running.store;
    await expect(sql.query(`update audit_entry set kind = 'frozen'`)).rejects.toThrow(/never changes/);
  });
});
