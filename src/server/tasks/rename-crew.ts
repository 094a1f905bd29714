import { auditEntry } from './audit/audit-entry.ts';
import type { Doer } from './audit/doer.ts';
import { lockCrew } from './lock-crew.ts';
import type { TaskContext } from './task-context.ts';

/** Gives a crew another name. */
export function renameCrew(
  { store, clock }: TaskContext,
  { crewId, name, by }: { readonly crewId: string; readonly name: string; readonly by: Doer },
): Promise<void> {
  return store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    const { name: was } = await tx.crew.findUniqueOrThrow({ where: { id: crewId } });
    if (was === name) return;
    await tx.crew.update({ where: { id: crewId }, data: { name } });
    const at = new Date(clock.now());
    await auditEntry(tx, { crewId, by, at, kind: 'crew-renamed', what: { crew: name, was } });
  });
}
