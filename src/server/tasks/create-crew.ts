import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { CrewSummary } from '#wire/crews.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { TaskContext } from './task-context.ts';

/** A new crew, with the person who made it as its lead. */
export async function createCrew(
  { store, makeId }: TaskContext,
  { userId, name }: { readonly userId: string; readonly name: string },
): Promise<Result<CrewSummary, Refusal>> {
  const mine = await store.prisma.membership.count({ where: { userId } });
  if (mine >= CAPS.crewsPerPerson) return refuse('too-many-crews');
  const crew = await store.prisma.crew.create({
    data: { id: makeId(), name, memberships: { create: { userId, role: 'lead' } } },
  });
  return ok({ id: crew.id, name: crew.name, role: 'lead', members: 1, rigs: 0 });
}
