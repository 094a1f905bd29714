import { type QueryClient, useQuery, useQueryClient } from '@tanstack/react-query';
import type { Provenance, RigRevisionSummary } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { newerWords, recordWords } from '#words/restore.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { isUnreachable } from '../../kit/data/unreachable.ts';
import type { RevisionAt } from '../../live/kept/use-kept-rig.ts';

/** What a show can be put back to. */
export interface RestoreRecord {
  readonly at: RevisionAt;
  readonly words: string;
  /** The house rig whose record it is, to which what stays can be proposed; null for a record that is no house's. */
  readonly house: { readonly rigId: string; readonly number: number } | null;
}

/** A house rig that I may read, with its newest revision. */
interface HouseHere {
  readonly rig: RigSummary;
  readonly newest: RigRevisionSummary;
}

/** A show of a show of a show: nobody goes further. */
const STEPS = 20;

/**
 * The records that a show can be put back to, the likeliest first: the one it began as, which is its own revision 1, and that of its house now,
 * where I may read it and it has gone on. Who took a show over from another puts back the house, not that show. Undefined while that is being asked.
 */
export function useRestoreRecords(
  rig: RigSummary,
  from: Provenance,
): readonly [RestoreRecord, ...RestoreRecord[]] | undefined {
  const trpc = useTRPC();
  const client = useQueryClient();
  const { data, isFetching } = useQuery({
    queryKey: ['house-of', rig.id],
    queryFn: () => houseHere(client, trpc, from),
  });
  const isOfHouse = from.rigKind === 'house';
  const own: RestoreRecord = {
    at: { rigId: rig.id, number: 1, hash: from.hash },
    words: recordWords(from),
    house: isOfHouse ? { rigId: from.rigId, number: from.number } : null,
  };
  if (data === undefined && isFetching && !isOfHouse) return undefined;
  if (data === undefined || data === null || data.newest.hash === from.hash) return [own];
  const { id, name } = data.rig;
  const { number, hash } = data.newest;
  const newer: RestoreRecord = {
    at: { rigId: id, number, hash },
    words: newerWords(name, number),
    house: { rigId: id, number },
  };
  return isOfHouse ? [own, newer] : [newer, own];
}

/** The house rig at the beginning of it all, as far as I may read the way there; null when I may not, or there is none. */
async function houseHere(
  client: QueryClient,
  trpc: ReturnType<typeof useTRPC>,
  start: Provenance,
): Promise<HouseHere | null> {
  let from: Provenance | null = start;
  try {
    for (let step = 0; step < STEPS && from !== null; step++) {
      const { rigId } = from;
      const rig: RigSummary = await client.fetchQuery(trpc.rigs.get.queryOptions({ rigId }));
      if (rig.kind === 'house') {
        const [newest] = await client.fetchQuery(trpc.revisions.list.queryOptions({ rigId }));
        return newest === undefined ? null : { rig, newest };
      }
      from = rig.startedFrom;
    }
  } catch (error) {
    if (isUnreachable(error)) throw error;
    // Not a rig of mine: there is only the record that the show began as.
  }
  return null;
}
