import { present } from '#base/assert.ts';
import { randomId } from '#base/random-id.ts';
import type { Store } from '#server/db/store.ts';
import { storeNewRig } from '#server/tasks/store-new-rig.ts';

/** A house rig, a show that began as its revision 1, and what that show proposes to it. */
export interface Proposed {
  readonly houseId: string;
  readonly showId: string;
  readonly proposalId: string;
}

interface Of {
  readonly crewId: string;
  readonly userId: string;
  readonly mark: string;
  /** Makes revision 1 of a rig. */
  readonly freeze: (rigId: string) => Promise<void>;
}

export async function newProposal(store: Store, { crewId, userId, mark, freeze }: Of): Promise<Proposed> {
  const [houseId, showId, proposalId] = [randomId(), randomId(), randomId()];
  const at = new Date();
  const both = { crewId, venueId: null, userId, at };
  await storeNewRig(store, { ...both, id: houseId, name: `${mark} house`, kind: 'house' });
  await storeNewRig(store, { ...both, id: showId, name: `${mark} show`, kind: 'show' });
  await freeze(houseId);
  const revision = await store.prisma.rigRevision.findFirst({ where: { rigId: houseId }, select: { hash: true } });
  const startedFrom = {
    rigId: houseId,
    rigName: `${mark} house`,
    rigKind: 'house',
    crewId,
    crewName: `${mark} crew`,
    venueName: null,
    number: 1,
    hash: present(revision, `the house rig ${houseId} was frozen`).hash,
    at: at.toISOString(),
    way: 'started',
  };
  await store.prisma.$transaction([
    store.prisma.rig.update({ where: { id: showId }, data: { startedFrom } }),
    store.prisma.proposal.create({
      data: {
        id: proposalId,
        rigId: houseId,
        fromRigId: showId,
        fromRigName: `${mark} show`,
        fromCrewId: crewId,
        fromCrewName: `${mark} crew`,
        number: 1,
        edits: [{ kind: 'set-universe', universe: 1, label: mark }],
        words: `${mark} words`,
        createdBy: userId,
        createdByName: `${mark} member`,
        createdAt: at,
      },
    }),
  ]);
  return { houseId, showId, proposalId };
}
