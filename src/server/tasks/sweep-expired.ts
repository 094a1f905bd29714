import { unstageForgotten } from './archive/staged-crew.ts';
import { destroyRig } from './removal/destroy-rig.ts';
import { KEPT_MS } from './removal/removed-rigs.ts';
import type { TaskContext } from './task-context.ts';

/**
 * Deletes sessions and verifications whose time is over, invitations a month after theirs, people whose sign-up was cut off before
 * it had a password, rigs that nobody brought back in time, and
 * what was brought in half-way of an archive.
 */
export async function sweepExpired(context: Pick<TaskContext, 'store' | 'clock'>): Promise<void> {
  const { store, clock } = context;
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
  await destroyForgottenRigs(context);
  await unstageForgotten(context);
}

/** The audit says that nobody did it: its days were over. */
async function destroyForgottenRigs(context: Pick<TaskContext, 'store' | 'clock'>): Promise<void> {
  const { store, clock } = context;
  const forgotten = await store.prisma.rig.findMany({
    // A crew without a member is being brought in right now.
    where: { removedAt: { lt: new Date(clock.now() - KEPT_MS) }, crew: { memberships: { some: {} } } },
    select: { id: true },
  });
  for (const { id } of forgotten) await destroyRig(context, { rigId: id, by: NOBODY });
}

const NOBODY = { id: '', name: '' } as const;
