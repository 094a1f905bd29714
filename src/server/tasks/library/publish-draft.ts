import { ok, type Result, refuse } from '#base/result.ts';
import { readDraft } from '#document/draft/draft-reader.ts';
import { stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { DraftPublished } from '#wire/library.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';
import { type Added, addRevision } from './add-revision.ts';
import { type RevisionContent, revisionContent } from './revision-content.ts';
import { storableText } from './storable.ts';
import { typeTaken } from './take-file.ts';

interface PublishedDraft {
  readonly crewId: string;
  readonly userId: string;
  readonly draftId: string;
  readonly note: string;
}

/** How often a draft is read again because somebody wrote in it meanwhile. */
const READINGS = 5;

/**
 * Makes a revision of what a draft says, and closes the draft. The revision holds every edit that was ever acknowledged: one that is
 * committed between reading and closing makes it read again, and afterwards none is taken.
 */
export async function publishDraft(
  context: TaskContext,
  published: PublishedDraft,
): Promise<Result<DraftPublished, Refusal>> {
  for (let reading = 0; reading < READINGS; reading++) {
    const read = await readWritten(context, published.draftId);
    if (!read.ok) return read;
    const { type, troubles, seq } = read.value;
    const stopping = troubles.filter(stopsPublishing);
    if (stopping.length > 0) return ok({ outcome: 'stopped', troubles: stopping });
    const added = await close(context, published, { content: await revisionContent(type, null), seq });
    if (added === 'written-meanwhile') continue;
    if (!added.ok) return added;
    await context.revoke({ draft: published.draftId });
    return ok(await typeTaken(context, published.crewId, added.value));
  }
  return refuse('draft-busy');
}

async function readWritten({ store, readDraftDoc }: TaskContext, draftId: string) {
  const found = await store.prisma.typeDraft.findUnique({ where: { id: draftId } });
  const read = await readDraftDoc(draftId, (doc, seq) => ({ draft: readDraft(doc), seq }));
  if (!found || !read) return refuse('no-such-draft' as const);
  if (found.state !== 'open') return refuse('draft-closed' as const);
  const base: FixtureType | null = found.baseContent === null ? null : JSON.parse(found.baseContent);
  return ok({ ...typeOfDraft(read.draft, base), seq: read.seq });
}

/** Holding the draft's row keeps appends out, which take their numbers from it. */
async function close(
  { store, clock, makeId }: TaskContext,
  { crewId, userId, draftId, note }: PublishedDraft,
  { content, seq }: { readonly content: RevisionContent; readonly seq: number },
): Promise<Result<Added, Refusal> | 'written-meanwhile'> {
  const revision = { crewId, userId, at: new Date(clock.now()), origin: 'draft', note: storableText(note) } as const;
  return store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    const draft = await lockDraft(tx, draftId);
    if (!draft) return refuse('draft-closed');
    if (Number(draft.head) !== seq) return 'written-meanwhile';
    const onto = await ontoOf(tx, draft.typeId);
    const added = await addRevision(tx, onto, { ...revision, content, newId: makeId() });
    if (!added.ok) return added;
    const { typeId } = added.value;
    await tx.typeDraft.update({ where: { id: draftId }, data: { state: 'published', typeId } });
    return added;
  });
}

async function lockDraft(tx: Prisma.TransactionClient, draftId: string) {
  await tx.$queryRaw`select 1 from type_draft where id = ${draftId} for update`;
  return tx.typeDraft.findFirst({ where: { id: draftId, state: 'open' }, select: { head: true, typeId: true } });
}

/** A type that was removed took its open drafts with it, so the type of an open draft is there. */
async function ontoOf(tx: Prisma.TransactionClient, typeId: string | null) {
  return typeId === null ? null : tx.fixtureType.findUniqueOrThrow({ where: { id: typeId } });
}
