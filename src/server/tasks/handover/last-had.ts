import type { LastHad } from '#wire/handovers.ts';
import type { Provenance } from '#wire/record.ts';
import type { Store } from '../../db/store.ts';

/** How often a rig may have been handed on before nobody looks further back. */
const MOST_HANDS = 8;

type Beginning = Pick<Provenance, 'rigId' | 'number'>;

interface Row {
  readonly id: string;
  readonly name: string;
  readonly crewId: string;
  readonly createdAt: Date;
  readonly from: string | null;
}

/**
 * Where each crew of a person holds what it last had of a rig: the first revision of its newest rig that began as one of it, else of what
 * that rig itself began as, and so on back; or, where the rig began as a crew's own, the revision of that. `from` is what it began as.
 */
export async function lastHad(
  store: Store,
  { userId, rigId, from }: { readonly userId: string; readonly rigId: string; readonly from: Beginning | null },
): Promise<readonly LastHad[]> {
  const line = await lineOf(store, rigId, from);
  const rows = await store.sql.query<Row>(
    `select r.id, r.name, r.crew_id as "crewId", r.created_at as "createdAt", r.started_from->>'rigId' as "from"
       from rig r join membership m on m.crew_id = r.crew_id
      where m.user_id = $1 and r.removed_at is null
        and (r.id = any($2::text[]) or r.started_from->>'rigId' = any($2::text[]))
      order by r.created_at desc, r.id`,
    [userId, line.map((each) => each.rigId)],
  );
  const best = new Map<string, { readonly depth: number; readonly had: LastHad }>();
  for (const row of rows) {
    for (const found of [ownInLine(line, row), begunFromLine(line, row)]) {
      const known = best.get(row.crewId);
      if (found !== undefined && (known === undefined || found.depth < known.depth)) best.set(row.crewId, found);
    }
  }
  return [...best.values()].map(({ had }) => had);
}

/** The rig, what it began as, what that began as, …; each but the first with the number of the revision that was begun from. */
async function lineOf(store: Store, rigId: string, from: Beginning | null): Promise<readonly Beginning[]> {
  const line: Beginning[] = [{ rigId, number: 0 }];
  let next = from;
  while (next !== null && line.length <= MOST_HANDS && !line.some((each) => each.rigId === next?.rigId)) {
    line.push({ rigId: next.rigId, number: next.number });
    const rig = await store.prisma.rig.findUnique({ where: { id: next.rigId }, select: { startedFrom: true } });
    next = (rig?.startedFrom ?? null) as Provenance | null;
  }
  return line;
}

/** A rig that the offered one began as, some hands ago: it counts as nearer than others that began as it. */
function ownInLine(line: readonly Beginning[], row: Row) {
  const depth = line.findIndex(({ rigId }) => rigId === row.id);
  const number = line[depth]?.number ?? 0;
  // The offered rig itself is the giver's.
  return depth < 1 ? undefined : { depth: depth - 0.5, had: hadOf(row, number) };
}

function begunFromLine(line: readonly Beginning[], row: Row) {
  const depth = line.findIndex(({ rigId }) => rigId === row.from);
  // The offered rig itself, and what it began as, began as a part of the line too.
  const isInLine = line.some(({ rigId }) => rigId === row.id);
  return depth < 0 || isInLine ? undefined : { depth, had: hadOf(row, 1) };
}

const hadOf = ({ crewId, id, name, createdAt }: Row, number: number): LastHad => ({
  crewId,
  rigId: id,
  rigName: name,
  number,
  at: createdAt.toISOString(),
});
