import { Provenance } from '#wire/record.ts';
import type { Store } from '../../db/store.ts';

/** A house rig that a show began as, and whose it is. */
export interface HouseOfShow {
  readonly rigId: string;
  readonly rigName: string;
  readonly crewId: string;
}

/** A show of a show of a show: nobody goes further. */
const STEPS = 20;

/**
 * The house rig `houseId`, when the rig `showId` began as a revision of it, or as one of a rig that did. Each step must be proven: by a revision
 * that is here and has the hash that is named, since where a rig says it came from may have come in a file. Undefined else, and for a
 * house rig that is gone.
 */
export async function houseOfShow(store: Store, showId: string, houseId: string): Promise<HouseOfShow | undefined> {
  let rigId = showId;
  for (let step = 0; step < STEPS; step++) {
    const rig = await store.prisma.rig.findUnique({ where: { id: rigId }, select: { startedFrom: true } });
    const from = Provenance.safeParse(rig?.startedFrom).data;
    if (from === undefined) return undefined;
    const revision = await store.prisma.rigRevision.findUnique({
      where: { rigId_number: { rigId: from.rigId, number: from.number } },
      select: { hash: true, rig: { select: { name: true, kind: true, crewId: true, removedAt: true } } },
    });
    if (revision?.hash !== from.hash) return undefined;
    const { name, kind, crewId, removedAt } = revision.rig;
    if (from.rigId === houseId)
      return kind === 'house' && removedAt === null ? { rigId: houseId, rigName: name, crewId } : undefined;
    rigId = from.rigId;
  }
  return undefined;
}
