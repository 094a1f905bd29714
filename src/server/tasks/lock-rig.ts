import type { Prisma } from '../db/generated/client.ts';

/** Holds a rig's row until the transaction ends, so that what is done with a rig as a whole never crosses. Null when there is none. */
export async function lockRig(tx: Prisma.TransactionClient, rigId: string) {
  await tx.$queryRaw`select 1 from rig where id = ${rigId} for update`;
  return tx.rig.findUnique({ where: { id: rigId } });
}
