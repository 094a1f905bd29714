import type { HandoverState, HandoverSummary } from '#wire/handovers.ts';
import type { Prisma } from '../../db/generated/client.ts';
import type { TaskContext } from '../task-context.ts';

/** As many as are listed; older ones are in the audit. */
const MOST = 500;

type Asked = { readonly crewId: string; readonly rigId?: string };

/** The offers that a crew has made, or only those of one rig of it, and those that it has answered; the newest first. */
export async function listHandovers(
  { store, clock }: Pick<TaskContext, 'store' | 'clock'>,
  { crewId, rigId }: Asked,
): Promise<readonly HandoverSummary[]> {
  const rows = await store.prisma.handover.findMany({
    where: rigId === undefined ? { OR: [{ crewId }, { toCrewId: crewId }] } : { crewId, rigId },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: MOST,
    include: NAMES,
  });
  return rows.map((row) => summaryOf(row, crewId, clock.now()));
}

const NAMES = {
  crew: { select: { name: true } },
  revision: { select: { rig: { select: { name: true } } } },
} as const satisfies Prisma.HandoverInclude;

type Row = Prisma.HandoverGetPayload<{ include: typeof NAMES }>;

function summaryOf(row: Row, crewId: string, now: number): HandoverSummary {
  const way = row.crewId === crewId ? 'given' : 'received';
  return {
    id: row.id,
    way,
    crewName: row.crew.name,
    rigId: row.rigId,
    rigName: row.revision.rig.name,
    number: row.number,
    words: row.words,
    by: row.createdByName,
    at: row.createdAt.toISOString(),
    expiresAt: row.expiresAt.toISOString(),
    state: stateOf(row, now),
    decidedBy: row.decidedByName,
    decidedAt: row.decidedAt?.toISOString() ?? null,
    answer: row.answer,
    toCrewName: row.toCrewName,
    receivedId: way === 'received' ? row.receivedId : null,
  };
}

const stateOf = ({ state, expiresAt }: Row, now: number): HandoverState =>
  state === 'offered' && expiresAt.getTime() <= now ? 'expired' : state;
