import type { Prisma } from '../db/generated/client.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';

interface Withdrawn {
  readonly crewId: string;
  readonly by: Doer;
  readonly at: Date;
  /** One invitation, or all those of a person. */
  readonly which: { readonly id: string } | { readonly createdBy: string };
}

/** Ends invitations of a crew that nobody has used, and answers how many those were. The crew's row has to be locked. */
export async function withdrawInvitations(
  tx: Prisma.TransactionClient,
  { crewId, by, at, which }: Withdrawn,
): Promise<number> {
  const where = { ...which, crewId, usedAt: null };
  const open = await tx.invitation.findMany({ where, orderBy: { id: 'asc' } });
  await tx.invitation.deleteMany({ where });
  for (const { role, expiresAt } of open)
    if (expiresAt > at) await auditEntry(tx, { crewId, by, at, kind: 'invitation-withdrawn', what: { role } });
  return open.length;
}
