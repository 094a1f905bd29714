import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';
import { isBuiltIn } from './built-in-types.ts';
import type { TypeOfCrew } from './read-type.ts';

/** Takes a type out of a library and drops its open drafts. Rigs keep the copies of its modes that they have. */
export async function removeType(
  { store, clock, revoke }: TaskContext,
  { crewId, typeId, by }: TypeOfCrew & { readonly by: Doer },
): Promise<Result<null, Refusal>> {
  if (isBuiltIn(typeId)) return refuse('built-in-type');
  const dropped = await store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    const type = await tx.fixtureType.findFirst({ where: { id: typeId, crewId, removedAt: null } });
    if (!type) return undefined;
    const at = new Date(clock.now());
    await tx.fixtureType.update({ where: { id: typeId }, data: { removedAt: at, key: null } });
    const what = { type: `${type.maker} ${type.model}`.trim() };
    await auditEntry(tx, { crewId, by, at, kind: 'type-removed', what });
    const drafts = await tx.typeDraft.findMany({ where: { typeId, state: 'open' }, select: { id: true } });
    await tx.typeDraft.updateMany({ where: { typeId, state: 'open' }, data: { state: 'dropped' } });
    return drafts;
  });
  if (!dropped) return refuse('no-such-type');
  await Promise.all(dropped.map(({ id }) => revoke({ draft: id })));
  return ok(null);
}
