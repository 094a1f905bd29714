import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';
import { isBuiltIn } from './built-in-types.ts';
import type { TypeOfCrew } from './read-type.ts';

/** Takes a type out of a library and drops its open drafts. Rigs keep the copies of its modes that they have. */
export async function removeType(
  { store, clock, revoke }: TaskContext,
  { crewId, typeId }: TypeOfCrew,
): Promise<Result<null, Refusal>> {
  if (isBuiltIn(typeId)) return refuse('built-in-type');
  const dropped = await store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    const gone = await tx.fixtureType.updateMany({
      where: { id: typeId, crewId, removedAt: null },
      data: { removedAt: new Date(clock.now()), key: null },
    });
    if (gone.count === 0) return undefined;
    const drafts = await tx.typeDraft.findMany({ where: { typeId, state: 'open' }, select: { id: true } });
    await tx.typeDraft.updateMany({ where: { typeId, state: 'open' }, data: { state: 'dropped' } });
    return drafts;
  });
  if (!dropped) return refuse('no-such-type');
  await Promise.all(dropped.map(({ id }) => revoke({ draft: id })));
  return ok(null);
}
