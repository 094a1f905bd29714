import type { RigKind } from '#wire/rigs.ts';
import type { Store } from '../db/store.ts';
import { firstUpdate } from './first-update.ts';

export interface StoredNewRig {
  readonly id: string;
  readonly crewId: string;
  readonly venueId: string | null;
  readonly name: string;
  readonly kind: RigKind;
  /** Who made it: the author of the first update of its log. */
  readonly userId: string;
  readonly at: Date;
}

/** Stores a rig together with the first update of its log: no rig is ever seen without a document. */
export async function storeNewRig(store: Store, { userId, at, ...rig }: StoredNewRig): Promise<void> {
  const { prisma } = store;
  await prisma.$transaction([
    prisma.rig.create({ data: { ...rig, head: 1n, createdAt: at } }),
    prisma.rigUpdate.create({ data: { rigId: rig.id, seq: 1n, author: userId, at, bytes: firstUpdate() } }),
  ]);
}
