import { present } from '#base/assert.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import type { Prisma } from '../db/generated/client.ts';
import type { Store } from '../db/store.ts';
import { auditEntry, type NewAuditEntry } from './audit/audit-entry.ts';
import { lockCrew } from './lock-crew.ts';
import { rigSummaries } from './rig-summaries.ts';
import { type BegunAs, newRigWrites } from './store-new-rig.ts';

/** A rig that is to come to a crew. */
export interface ToAdd {
  readonly id: string;
  readonly at: Date;
  readonly crewId: string;
  readonly name: string;
  readonly kind: RigKind;
  readonly venueId: string | null;
  readonly by: { readonly id: string; readonly name: string };
  /** The revision of another rig that it begins as; left out: it begins empty. */
  readonly begin?: BegunAs;
  readonly audit: readonly NewAuditEntry[];
}

/**
 * Stores a rig that a crew gets, within the cap of rigs. `claim` is asked in the same transaction, before anything is written,
 * whether it may be had.
 */
export async function addRig(
  store: Store,
  { by, audit, ...rig }: ToAdd,
  claim: (tx: Prisma.TransactionClient) => Promise<Result<null, Refusal>> = async () => ok(null),
): Promise<Result<RigSummary, Refusal>> {
  const { crewId } = rig;
  const stored = await store.prisma.$transaction(async (tx): Promise<Result<null, Refusal>> => {
    await lockCrew(tx, crewId);
    if ((await tx.rig.count({ where: { crewId, removedAt: null } })) >= CAPS.rigsPerCrew) return refuse('too-many');
    const claimed = await claim(tx);
    if (!claimed.ok) return claimed;
    for (const write of newRigWrites(tx, { ...rig, userId: by.id })) await write;
    for (const entry of audit) await auditEntry(tx, entry);
    return ok(null);
  });
  if (!stored.ok) return stored;
  const [summary] = await rigSummaries(store, { userId: by.id, rigId: rig.id });
  return ok(present(summary, `rig ${rig.id} was made for ${by.id}, who is not in crew ${crewId}`));
}

/** Whether a venue, if any is named, is one of the crew. */
export async function isVenueOf(store: Store, crewId: string, venueId: string | null): Promise<boolean> {
  return venueId === null || (await store.prisma.venue.findFirst({ where: { id: venueId, crewId } })) !== null;
}
