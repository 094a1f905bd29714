import type { TaskContext } from './task-context.ts';

/**
 * Deletes sessions and verifications whose time is over, invitations a month after theirs, and people whose sign-up was cut off before
 * it had a password.
 */
export async function sweepExpired({ store, clock }: Pick<TaskContext, 'store' | 'clock'>): Promise<void> {
  const now = clock.now();
  const over = { expiresAt: { lt: new Date(now) } };
  await store.prisma.session.deleteMany({ where: over });
  await store.prisma.verification.deleteMany({ where: over });
  const monthAgo = new Date(now - 30 * 24 * 60 * 60 * 1000);
  await store.prisma.invitation.deleteMany({ where: { expiresAt: { lt: monthAgo } } });
  const hourAgo = new Date(now - 60 * 60 * 1000);
  await store.prisma.user.deleteMany({
    where: { createdAt: { lt: hourAgo }, accounts: { none: {} }, memberships: { none: {} } },
  });
}
