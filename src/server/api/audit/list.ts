import { type AuditPage, ListAudit } from '#wire/audit.ts';
import { readAudit } from '../../tasks/audit/read-audit.ts';
import { inCrew } from '../procedures.ts';

/** What was done with the crew's people, rigs and data, the newest first. */
export const listAudit = inCrew('audit.read')
  .input(ListAudit)
  .query(({ ctx, input }): Promise<AuditPage> => readAudit(ctx.store, input));
