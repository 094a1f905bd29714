import type { ProposalReceived, ProposalState, ProposalsOfRig, ProposalToRead } from '#wire/proposals.ts';
import type { Store } from '../../db/store.ts';

interface Row {
  readonly id: string;
  readonly rigId: string;
  readonly state: ProposalState;
  readonly words: string;
  readonly edits: number;
  readonly by: string;
  readonly at: Date;
  readonly decidedBy: string | null;
  readonly decidedAt: Date | null;
  readonly answer: string;
  readonly fromRigName: string;
  readonly fromCrewName: string;
  readonly number: number;
}

/** Proposals of one rig that are listed, the open ones first. */
const MOST = 300;

/** What was proposed to a rig, and what it has proposed itself, the open ones first, then the newest. */
export async function proposalsOfRig(store: Store, rigId: string): Promise<ProposalsOfRig> {
  const rows = await store.sql.query<Row>(
    `select id, rig_id as "rigId", state::text as state, words, jsonb_array_length(edits)::int as edits,
            created_by_name as by, created_at as at, decided_by_name as "decidedBy", decided_at as "decidedAt", answer,
            from_rig_name as "fromRigName", from_crew_name as "fromCrewName", number
       from proposal where rig_id = $1 or from_rig_id = $1
      order by (state = 'open') desc, created_at desc, id limit ${MOST}`,
    [rigId],
  );
  const received = rows.filter((row) => row.rigId === rigId);
  return {
    received: received.map(receivedOf),
    made: rows.filter((row) => !received.includes(row)).map(madeOf),
  };
}

/** What the show's crew knows: neither names nor places of the house. */
const madeOf = ({ id, state, words, edits, by, at, decidedAt, answer }: Row) => ({
  id,
  state,
  words,
  edits,
  by,
  at: at.toISOString(),
  decidedAt: decidedAt?.toISOString() ?? null,
  answer,
});

const receivedOf = (row: Row): ProposalReceived => ({
  ...madeOf(row),
  fromRigName: row.fromRigName,
  fromCrewName: row.fromCrewName,
  number: row.number,
  decidedBy: row.decidedBy,
});

/** A proposal to the rig, as its crew looks at it. */
export async function proposalTo(store: Store, rigId: string, id: string): Promise<ProposalToRead | undefined> {
  const row = await store.prisma.proposal.findFirst({ where: { id, rigId }, select: { number: true, edits: true } });
  // Written by `makeProposal`, and never changed since.
  return row === null ? undefined : { number: row.number, edits: row.edits as readonly unknown[] };
}
