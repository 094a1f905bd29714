import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { CrewSummary } from '#wire/crews.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import type { TaskContext } from './task-context.ts';

/** A new crew, with the person who made it as its lead. */
export async function createCrew(
  { store, clock, makeId }: TaskContext,
  { by, name }: { readonly by: Doer; readonly name: string },
): Promise<Result<CrewSummary, Refusal>> {
  const mine = await store.prisma.membership.count({ where: { userId: by.id } });
  if (mine >= CAPS.crewsPerPerson) return refuse('too-many-crews');
  const id = makeId();
  const at = new Date(clock.now());
  await store.prisma.$transaction([
    store.prisma.crew.create({ data: { id, name, memberships: { create: { userId: by.id, role: 'lead' } } } }),
    auditEntry(store.prisma, { crewId: id, by, at, kind: 'crew-made', what: { crew: name } }),
  ]);
  return ok({ id, name, role: 'lead', members: 1, rigs: 0 });
}
