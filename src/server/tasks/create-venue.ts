import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import { isTaken } from '../db/is-taken.ts';
import type { TaskContext } from './task-context.ts';

/** A new venue of a crew; its name is the only one of its kind there. */
export async function createVenue(
  { store, makeId }: TaskContext,
  { crewId, name }: { readonly crewId: string; readonly name: string },
): Promise<Result<{ readonly id: string; readonly name: string }, Refusal>> {
  if ((await store.prisma.venue.count({ where: { crewId } })) >= CAPS.venuesPerCrew) return refuse('too-many');
  try {
    return ok(await store.prisma.venue.create({ data: { id: makeId(), crewId, name } }));
  } catch (error) {
    if (isTaken(error)) return refuse('name-taken');
    throw error;
  }
}
