import { ok, type Result, refuse } from '#base/result.ts';
import { readEdits } from '#document/edit/edit-schema.ts';
import { hasHappened } from '#engine/diff/restore.ts';
import type { Edit } from '#engine/model/edit.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { TaskContext } from '../task-context.ts';
import { type HouseOfShow, houseOfShow } from './house-of-show.ts';

export interface ToPropose {
  /** The show, and whose it is. */
  readonly show: {
    readonly rigId: string;
    readonly rigName: string;
    readonly crewId: string;
    readonly crewName: string;
  };
  readonly houseId: string;
  readonly number: number;
  readonly words: string;
  readonly edits: readonly unknown[];
  readonly by: { readonly id: string; readonly name: string };
}

/**
 * Lays before the crew of a house what a show would leave changed in their rig. Whoever proposes hears the same whether the house is not theirs
 * to propose to, is gone, or never had that revision.
 */
export async function makeProposal(context: TaskContext, asked: ToPropose): Promise<Result<string, Refusal>> {
  const { store, clock, makeId } = context;
  const { show, number, words, by } = asked;
  const edits = readEdits(asked.edits);
  if (edits === undefined || !edits.every(isOfRig)) return refuse('proposal-unreadable');
  const house = await houseOfShow(store, show.rigId, asked.houseId);
  if (house === undefined || !(await hasRevision(store, house, number))) return refuse('no-house-rig');
  const at = new Date(clock.now());
  const id = makeId();
  return store.prisma.$transaction(async (tx) => {
    // Two who propose at once do not get past the caps together.
    await tx.$executeRaw`select pg_advisory_xact_lock(${PROPOSE_LOCK}, hashtext(${house.rigId}))`;
    const open = await tx.proposal.groupBy({
      by: ['fromRigId'],
      where: { rigId: house.rigId, state: 'open' },
      _count: true,
    });
    const own = open.find(({ fromRigId }) => fromRigId === show.rigId)?._count ?? 0;
    const all = open.reduce((sum, { _count }) => sum + _count, 0);
    if (own >= CAPS.openProposalsPerShow || all >= CAPS.openProposalsPerHouse) return refuse('too-many-proposals');
    await tx.proposal.create({
      data: {
        id,
        rigId: house.rigId,
        fromRigId: show.rigId,
        fromRigName: show.rigName,
        fromCrewId: show.crewId,
        fromCrewName: show.crewName,
        number,
        edits: edits as unknown as Prisma.InputJsonValue,
        words,
        createdBy: by.id,
        createdByName: by.name,
        createdAt: at,
      },
    });
    await auditBoth(tx, { kind: 'proposal-made', show, house, by, at });
    return ok(id);
  });
}

/** The first half of the advisory lock under which one house rig takes one proposal at a time: any number of our own. */
const PROPOSE_LOCK = 7_214_410;

/** What happened to a show is not the house's. */
const isOfRig = (edit: Edit) => edit.kind !== 'set-card' || !hasHappened(edit.card);

const hasRevision = async (store: TaskContext['store'], { rigId }: HouseOfShow, number: number) =>
  (await store.prisma.rigRevision.count({ where: { rigId, number } })) > 0;

interface Done {
  readonly kind: 'proposal-made' | 'proposal-withdrawn';
  readonly show: Pick<ToPropose['show'], 'rigId' | 'rigName' | 'crewId' | 'crewName'>;
  readonly house: HouseOfShow;
  readonly by: ToPropose['by'];
  readonly at: Date;
}

/** Written down in both crews, each with its own rig; once where they are one. */
export async function auditBoth(tx: Prisma.TransactionClient, { kind, show, house, by, at }: Done): Promise<void> {
  const what = { rig: show.rigName };
  await auditEntry(tx, { crewId: show.crewId, by, at, kind, rigId: show.rigId, what });
  if (house.crewId === show.crewId) return;
  const theirs = { rig: house.rigName, was: show.rigName, crew: show.crewName };
  await auditEntry(tx, { crewId: house.crewId, by, at, kind, rigId: house.rigId, what: theirs });
}
