import type { TaskContext } from './task-context.ts';

/** Deletes sessions and verifications whose time is over, and invitations a month after theirs. */
export async function sweepExpired({ store, clock }: Pick<TaskContext, 'store' | 'clock'>): Promise<void> {
  const now = clock.now();
  const over = { expiresAt: { lt: new Date(now) } };
  await store.prisma.session.deleteMany({ where: over });
  await store.prisma.verification.deleteMany({ where: over });
  const monthAgo = new Date(now - 30 * 24 * 60 * 60 * 1000);
  await store.prisma.invitation.deleteMany({ where: { expiresAt: { lt: monthAgo } } });
}
