import type { z } from 'zod';
import type { AuditKind, AuditLine, AuditPage, AuditPerson, AuditWhat, ListAudit } from '#wire/audit.ts';
import { CAPS } from '#wire/caps.ts';
import type { Store } from '../../db/store.ts';

/** A page of what was written down of a crew. */
export async function readAudit(
  { prisma }: Store,
  { crewId, cursor, kind, by }: z.output<typeof ListAudit>,
): Promise<AuditPage> {
  const rows = await prisma.auditEntry.findMany({
    where: {
      crewId,
      ...(cursor ? { id: { lt: cursor } } : {}),
      ...(kind === null ? {} : { kind }),
      ...(by === null ? {} : { by }),
    },
    orderBy: { id: 'desc' },
    take: CAPS.auditPage + 1,
  });
  const lines = rows.slice(0, CAPS.auditPage).map(
    (row): AuditLine => ({
      id: Number(row.id),
      at: row.at.toISOString(),
      by: row.byName,
      // Only `auditEntry` writes them, and none is changed; an archive is read by the same list of kinds.
      kind: row.kind as AuditKind,
      rigId: row.rigId,
      what: row.what as unknown as AuditWhat,
    }),
  );
  return { lines, before: rows.length > lines.length ? (lines.at(-1)?.id ?? null) : null };
}

/** Who did anything that was written down, by the name they had last; by name. */
export function auditPeople({ sql }: Store, crewId: string): Promise<readonly AuditPerson[]> {
  return sql.query<AuditPerson>(
    `select id, name from (
       select distinct on (by) by as id, by_name as name from audit_entry where crew_id = $1 order by by, id desc) people
      order by name, id`,
    [crewId],
  );
}
