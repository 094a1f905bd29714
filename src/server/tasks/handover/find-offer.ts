import type { Prisma } from '../../db/generated/client.ts';
import { hashToken } from '../hash-token.ts';
import type { TaskContext } from '../task-context.ts';

/** An offer with what is told of it; the frozen rig and its findings stay where they are. */
export type FoundOffer = Prisma.HandoverGetPayload<{ include: typeof WITH_NAMES }>;

const WITH_NAMES = {
  crew: true,
  revision: { omit: { content: true, findings: true }, include: { rig: { include: { venue: true } } } },
} as const satisfies Prisma.HandoverInclude;

/**
 * The offer that a link leads to, for a person: while it is open, or once a crew of theirs has accepted it. One that was declined, taken
 * back or left too long, and one whose rig was removed, is found no more than one that never was.
 */
export async function findOffer(
  { store, clock }: Pick<TaskContext, 'store' | 'clock'>,
  { token, userId }: { readonly token: string; readonly userId: string },
): Promise<FoundOffer | undefined> {
  const found = await store.prisma.handover.findUnique({
    where: { tokenHash: hashToken(token) },
    include: WITH_NAMES,
  });
  if (found === null) return undefined;
  if (found.state === 'offered') {
    const isOpen = found.expiresAt.getTime() > clock.now() && found.revision.rig.removedAt === null;
    return isOpen ? found : undefined;
  }
  if (found.state !== 'accepted' || found.toCrewId === null) return undefined;
  const where = { crewId_userId: { crewId: found.toCrewId, userId } };
  return (await store.prisma.membership.findUnique({ where })) === null ? undefined : found;
}
