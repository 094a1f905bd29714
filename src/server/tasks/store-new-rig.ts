import type { Provenance } from '#wire/record.ts';
import type { RigKind } from '#wire/rigs.ts';
import type { Prisma } from '../db/generated/client.ts';
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
  /** The revision of another rig that it begins as; left out: it begins empty. */
  readonly begin?: BegunAs;
}

/** What a rig begins as: the first update of its log, and its own revision 1, which says the same. */
export interface BegunAs {
  readonly update: Uint8Array<ArrayBuffer>;
  readonly from: Provenance;
  readonly revision: Prisma.RigRevisionUncheckedCreateInput;
}

/** Stores a rig together with the first update of its log: no rig is ever seen without a document. */
export async function storeNewRig({ prisma }: Store, rig: StoredNewRig): Promise<void> {
  await prisma.$transaction(newRigWrites(prisma, rig));
}

/** What storing a rig writes, in this order; for a transaction that does more than that. */
export function newRigWrites(
  prisma: Prisma.TransactionClient,
  { userId, at, begin, ...rig }: StoredNewRig,
): Prisma.PrismaPromise<unknown>[] {
  const bytes = begin?.update ?? firstUpdate();
  return [
    prisma.rig.create({ data: { ...rig, head: 1n, createdAt: at, ...(begin ? { startedFrom: begin.from } : {}) } }),
    prisma.rigUpdate.create({ data: { rigId: rig.id, seq: 1n, author: userId, at, bytes } }),
    ...(begin ? [prisma.rigRevision.create({ data: begin.revision })] : []),
  ];
}
