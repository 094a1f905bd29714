import * as Y from 'yjs';
import { ok, type Result, refuse } from '#base/result.ts';
import { DRAFT_EDIT_LIMIT } from '#document/draft/apply-draft-edits.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import type { DraftEdit } from '#engine/draft/draft.ts';
import { draftOfType } from '#engine/draft/draft-of-type.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import type { Store } from '../../db/store.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';
import { findBuiltIn, isBuiltIn } from './built-in-types.ts';
import { storableJson } from './storable.ts';

interface OpenedDraft {
  readonly crewId: string;
  readonly userId: string;
  /** The type it becomes a revision of; null or a built-in one: it becomes a new type. */
  readonly typeId: string | null;
}

/** A new draft of a crew, with the first update of its log: empty, or saying what the newest revision of a type says. */
export async function openDraft(
  { store, clock, makeId }: Pick<TaskContext, 'store' | 'clock' | 'makeId'>,
  { crewId, userId, typeId }: OpenedDraft,
): Promise<Result<{ readonly draftId: string }, Refusal>> {
  const base = await baseOf(store, crewId, typeId);
  if (!base.ok) return base;
  const edits = base.value.type === null ? [] : draftOfType(base.value.type, makeId);
  if (edits.length > DRAFT_EDIT_LIMIT) return refuse('type-too-large');
  const at = new Date(clock.now());
  const draft = { id: makeId(), crewId, ...base.value.row, createdBy: userId, createdAt: at, head: 1n };
  const first = { draftId: draft.id, seq: 1n, author: userId, at, bytes: firstUpdate(edits) };
  return store.prisma.$transaction(async (tx): Promise<Result<{ readonly draftId: string }, Refusal>> => {
    await lockCrew(tx, crewId);
    if (draft.typeId !== null && !(await isThere(tx, crewId, draft.typeId))) return refuse('no-such-type');
    if ((await tx.typeDraft.count({ where: { crewId, state: 'open' } })) >= CAPS.openDraftsPerCrew)
      return refuse('too-many-drafts');
    await tx.typeDraft.create({ data: draft });
    await tx.typeDraftUpdate.create({ data: first });
    return ok({ draftId: draft.id });
  });
}

interface Base {
  readonly type: FixtureType | null;
  readonly row: {
    readonly typeId: string | null;
    readonly base: number | null;
    readonly baseContent: string | null;
  };
}

async function baseOf(store: Store, crewId: string, typeId: string | null): Promise<Result<Base, Refusal>> {
  if (typeId === null) return ok({ type: null, row: { typeId: null, base: null, baseContent: null } });
  if (isBuiltIn(typeId)) {
    const found = await findBuiltIn(typeId);
    if (!found) return refuse('no-such-type');
    const baseContent = storableJson(found.type);
    return ok({ type: found.type, row: { typeId: null, base: null, baseContent } });
  }
  const [newest] = await store.sql.query<{ readonly number: number; readonly content: string }>(
    `select r.number, r.content from fixture_type t join type_revision r on r.type_id = t.id and r.number = t.newest
      where t.crew_id = $1 and t.id = $2 and t.removed_at is null`,
    [crewId, typeId],
  );
  if (!newest) return refuse('no-such-type');
  return ok({ type: JSON.parse(newest.content), row: { typeId, base: newest.number, baseContent: newest.content } });
}

async function isThere(tx: Prisma.TransactionClient, crewId: string, id: string): Promise<boolean> {
  return (await tx.fixtureType.findFirst({ where: { id, crewId, removedAt: null }, select: { id: true } })) !== null;
}

function firstUpdate(edits: readonly DraftEdit[]): Uint8Array<ArrayBuffer> {
  const doc = createDraftDoc(edits);
  const update = Uint8Array.from(Y.encodeStateAsUpdate(doc));
  doc.destroy();
  return update;
}
