import type { AuditPerson } from '#wire/audit.ts';
import { auditPeople } from '../../tasks/audit/read-audit.ts';
import { inCrew } from '../procedures.ts';

/** Of whom there are entries, to choose from. */
export const listAuditPeople = inCrew('audit.read').query(
  ({ ctx }): Promise<readonly AuditPerson[]> => auditPeople(ctx.store, ctx.crew.crewId),
);
