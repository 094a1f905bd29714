import { ok, type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { TaskContext } from '../task-context.ts';

/** Gives a draft up. What was written in it stays in its log; nobody writes in it any more. */
export async function dropDraft({ store, revoke }: TaskContext, draftId: string): Promise<Result<null, Refusal>> {
  const dropped = await store.prisma.typeDraft.updateMany({
    where: { id: draftId, state: 'open' },
    data: { state: 'dropped' },
  });
  if (dropped.count === 0) return refuse('draft-closed');
  await revoke({ draft: draftId });
  return ok(null);
}
