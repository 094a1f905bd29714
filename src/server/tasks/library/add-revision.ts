import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { TypeTaken } from '#wire/library.ts';
import type { Refusal } from '#wire/refusal.ts';
import { Prisma } from '../../db/generated/client.ts';
import type { RevisionContent } from './revision-content.ts';
import { storableJson } from './storable.ts';
import { typeKey } from './type-key.ts';

export interface NewRevision {
  readonly crewId: string;
  readonly userId: string;
  readonly at: Date;
  readonly origin: 'file' | 'draft';
  readonly note: string;
  readonly content: RevisionContent;
  /** The id that a type gets which is not there yet. */
  readonly newId: string;
}

/** What became of a revision, before it is summed up. */
export interface Added {
  readonly outcome: TypeTaken['outcome'];
  readonly typeId: string;
  readonly number: number;
}

/** Which type a revision goes onto: one of these, or, with null, a new one. */
export interface Onto {
  readonly id: string;
  readonly newest: number;
}

/**
 * Adds a revision to a type, or a type with its first one. The crew's row has to be locked in the same transaction: that is what keeps
 * numbers without a gap and names apart when two add at once.
 */
export async function addRevision(
  tx: Prisma.TransactionClient,
  onto: Onto | null,
  added: NewRevision,
): Promise<Result<Added, Refusal>> {
  const { crewId, content } = added;
  if (onto && (await hashOf(tx, onto)) === content.hash)
    return ok({ outcome: 'same', typeId: onto.id, number: onto.newest });
  const named = await tx.fixtureType.findUnique({ where: { crewId_key: { crewId, key: typeKey(content) } } });
  if (named && named.id !== onto?.id) return refuse('type-name-taken');
  return onto ? addNext(tx, onto, added) : addFirst(tx, added);
}

async function addNext(
  tx: Prisma.TransactionClient,
  { id, newest }: Onto,
  added: NewRevision,
): Promise<Result<Added, Refusal>> {
  const number = newest + 1;
  if (number > CAPS.revisionsPerType) return refuse('too-many-revisions');
  await tx.typeRevision.create({ data: rowOf(id, number, added) });
  await tx.fixtureType.update({ where: { id }, data: { ...factsOf(added), newest: number } });
  return ok({ outcome: 'revision', typeId: id, number });
}

async function addFirst(tx: Prisma.TransactionClient, added: NewRevision): Promise<Result<Added, Refusal>> {
  const { crewId, newId: id, at } = added;
  if ((await tx.fixtureType.count({ where: { crewId, removedAt: null } })) >= CAPS.typesPerCrew)
    return refuse('too-many');
  await tx.fixtureType.create({ data: { id, crewId, ...factsOf(added), newest: 1, createdAt: at } });
  await tx.typeRevision.create({ data: rowOf(id, 1, added) });
  return ok({ outcome: 'new', typeId: id, number: 1 });
}

async function hashOf(tx: Prisma.TransactionClient, { id, newest }: Onto): Promise<string | undefined> {
  const where = { typeId_number: { typeId: id, number: newest } };
  return (await tx.typeRevision.findUnique({ where, select: { hash: true } }))?.hash;
}

function factsOf({ content }: NewRevision) {
  const { maker, model, guid } = content;
  return { maker, model, guid, key: typeKey(content) };
}

function rowOf(typeId: string, number: number, { content, note, origin, at, userId }: NewRevision) {
  const { hash, content: text, summary, report } = content;
  return {
    typeId,
    number,
    hash,
    content: text,
    summary: JSON.parse(storableJson(summary)),
    report: report === null ? Prisma.DbNull : JSON.parse(report),
    note,
    origin,
    at,
    by: userId,
  };
}
