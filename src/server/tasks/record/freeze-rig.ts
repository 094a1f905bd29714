import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { AcceptedBlocker } from '#wire/record.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import type { FreshRevision } from '../../record/record-job.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import { newestOfCrew } from '../library/newest-revisions.ts';
import type { TaskContext } from '../task-context.ts';

type FreezeContext = Pick<TaskContext, 'store' | 'clock' | 'record' | 'readRigRows'>;

interface ToFreeze {
  readonly rigId: string;
  readonly rigName: string;
  readonly crewId: string;
  readonly by: { readonly id: string; readonly name: string };
  readonly note: string;
  readonly accepted: { readonly by: string; readonly keys: readonly string[] };
}

/**
 * Freezes a rig as it is committed, as its next revision, and answers with the number. Every blocker it has then must be accepted, and by a
 * named person. It is read and checked in a thread of its own: whoever edits the rig meanwhile does not wait, and is not in it.
 */
export async function freezeRig(context: FreezeContext, asked: ToFreeze): Promise<Result<number, Refusal>> {
  const { store, record, clock } = context;
  const rows = await context.readRigRows(asked.rigId);
  if (rows === undefined) return refuse('no-such-rig');
  const frozen = await record.freeze(rows, await newestOfCrew(store, asked.crewId));
  if (!frozen.ok) return frozen;
  const fresh = frozen.value;
  const named = new Set(asked.accepted.keys);
  if (fresh.blockers.some((key) => !named.has(key))) return refuse('blockers-open');
  if (fresh.blockers.length > 0 && asked.accepted.by === '') return refuse('blockers-unnamed');
  const accepted = fresh.blockers.map((key): AcceptedBlocker => ({ key, by: asked.accepted.by }));
  const at = new Date(clock.now());
  return store.prisma.$transaction(async (tx) => {
    // Of two who freeze at once each gets a number of their own; edits do not wait for this lock.
    await tx.$executeRaw`select pg_advisory_xact_lock(${FREEZE_LOCK}, hashtext(${asked.rigId}))`;
    const newest = await tx.rigRevision.findFirst({
      where: { rigId: asked.rigId },
      orderBy: { number: 'desc' },
      select: { number: true, hash: true },
    });
    if (newest?.hash === fresh.hash) return refuse('revision-same');
    const number = (newest?.number ?? 0) + 1;
    if (number > CAPS.revisionsPerRig) return refuse('too-many-rig-revisions');
    await tx.rigRevision.create({
      data: {
        rigId: asked.rigId,
        number,
        note: asked.note,
        ...storedRevision(fresh, accepted),
        ...whoAndWhen(asked.by, at),
      },
    });
    const what = { rig: asked.rigName, number };
    await auditEntry(tx, { crewId: asked.crewId, by: asked.by, at, kind: 'frozen', rigId: asked.rigId, what });
    return ok(number);
  });
}

/** The first half of the advisory lock under which one revision of a rig is numbered at a time: any number of our own. */
const FREEZE_LOCK = 7_214_409;

type Stored = Pick<
  Prisma.RigRevisionUncheckedCreateInput,
  'hash' | 'content' | 'size' | 'seq' | 'units' | 'counts' | 'findings' | 'accepted'
>;

const storedRevision = (fresh: FreshRevision, accepted: readonly AcceptedBlocker[]): Stored => ({
  hash: fresh.hash,
  content: fresh.content,
  size: fresh.size,
  seq: BigInt(fresh.seq),
  units: fresh.units,
  counts: { ...fresh.counts },
  findings: fresh.findings,
  accepted: accepted.map((each) => ({ ...each })),
});

const whoAndWhen = (by: ToFreeze['by'], at: Date) => ({ by: by.id, byName: by.name, at });
