import type { AuditKind, AuditWhat } from '#wire/audit.ts';
import type { Prisma } from '../../db/generated/client.ts';
import type { Doer } from './doer.ts';

export interface NewAuditEntry {
  readonly crewId: string;
  readonly by: Doer;
  readonly at: Date;
  readonly kind: AuditKind;
  readonly rigId?: string;
  readonly what: AuditWhat;
}

/** Writes down what was done, as a part of the transaction that does it. */
export function auditEntry(
  prisma: Prisma.TransactionClient,
  { crewId, by, at, kind, rigId, what }: NewAuditEntry,
): Prisma.PrismaPromise<unknown> {
  return prisma.auditEntry.create({
    data: { crewId, by: by.id, byName: by.name, at, kind, rigId: rigId ?? null, what: { ...what } },
  });
}
