import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { isTaken } from '../db/is-taken.ts';
import type { TaskContext } from './task-context.ts';

export async function renameVenue(
  { store }: TaskContext,
  { venueId, name }: { readonly venueId: string; readonly name: string },
): Promise<Result<null, Refusal>> {
  try {
    await store.prisma.venue.update({ where: { id: venueId }, data: { name } });
    return ok(null);
  } catch (error) {
    if (isTaken(error)) return refuse('name-taken');
    throw error;
  }
}
