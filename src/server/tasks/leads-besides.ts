import type { Prisma } from '../db/generated/client.ts';

/** How many leads a crew has besides one person. */
export function leadsBesides(tx: Prisma.TransactionClient, crewId: string, userId: string): Promise<number> {
  return tx.membership.count({ where: { crewId, role: 'lead', userId: { not: userId } } });
}
