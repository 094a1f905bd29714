import type { Store } from '../../db/store.ts';

export type CrewRows = NonNullable<Awaited<ReturnType<typeof readCrew>>>;

/**
 * Everything that is kept of a crew but what is large, as of one moment: the logs, the frozen rigs and the types are read by and by, up to
 * what is said here. Nothing of those ever changes.
 */
export async function readCrew({ prisma }: Store, crewId: string) {
  const of = { where: { crewId } };
  const [crew, members, venues, listMappings, rigs, types, drafts, audit] = await prisma.$transaction(
    [
      prisma.crew.findUnique({ where: { id: crewId } }),
      prisma.membership.findMany({ ...of, include: { user: true }, orderBy: [{ joinedAt: 'asc' }, { userId: 'asc' }] }),
      prisma.venue.findMany({ ...of, orderBy: [{ createdAt: 'asc' }, { name: 'asc' }] }),
      prisma.listMapping.findMany({ ...of, orderBy: { key: 'asc' } }),
      prisma.rig.findMany({
        ...of,
        orderBy: [{ createdAt: 'asc' }, { name: 'asc' }, { id: 'asc' }],
        include: {
          revisions: { omit: { content: true, findings: true }, orderBy: { number: 'asc' } },
          proposals: { orderBy: [{ createdAt: 'asc' }, { words: 'asc' }] },
        },
      }),
      prisma.fixtureType.findMany({
        ...of,
        orderBy: [{ createdAt: 'asc' }, { maker: 'asc' }, { model: 'asc' }],
        include: { revisions: { omit: { content: true, report: true }, orderBy: { number: 'asc' } } },
      }),
      prisma.typeDraft.findMany({ ...of, omit: { baseContent: true }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] }),
      prisma.auditEntry.findMany({ ...of, orderBy: { id: 'asc' } }),
    ],
    { isolationLevel: 'RepeatableRead' },
  );
  if (crew === null) return undefined;
  const handovers = await prisma.handover.findMany({
    where: { rigId: { in: rigs.map(({ id }) => id) } },
    omit: { tokenHash: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  });
  return { crew, members, venues, listMappings, rigs, handovers, types, drafts, audit };
}
