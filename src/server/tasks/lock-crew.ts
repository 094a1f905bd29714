import type { Prisma } from '../db/generated/client.ts';

/** Holds a crew's row until the transaction ends: two changes of who is in it never cross. */
export async function lockCrew(tx: Prisma.TransactionClient, crewId: string): Promise<void> {
  await tx.$queryRaw`select 1 from crew where id = ${crewId} for update`;
}
