import { present } from '#base/assert.ts';
import { ok, type Result } from '#base/result.ts';
import type { TypeTaken } from '#wire/library.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { Prisma } from '../../db/generated/client.ts';
import { lockCrew } from '../lock-crew.ts';
import type { TaskContext } from '../task-context.ts';
import { type Added, addRevision, type Onto } from './add-revision.ts';
import type { RevisionContent } from './revision-content.ts';
import { typeKey } from './type-key.ts';
import { typeSummaries } from './type-summaries.ts';

interface TakenFile {
  readonly crewId: string;
  readonly userId: string;
  readonly content: RevisionContent;
}

/** Puts the type of a file into a crew's library: as a new one, or as the next revision of the one it is. */
export async function takeFile(
  context: Pick<TaskContext, 'store' | 'clock' | 'makeId'>,
  { crewId, userId, content }: TakenFile,
): Promise<Result<TypeTaken, Refusal>> {
  const { store, clock, makeId } = context;
  const at = new Date(clock.now());
  const added = await store.prisma.$transaction(async (tx) => {
    await lockCrew(tx, crewId);
    const onto = await sameType(tx, crewId, content);
    return addRevision(tx, onto, { crewId, userId, at, origin: 'file', note: '', content, newId: makeId() });
  });
  return added.ok ? ok(await typeTaken(context, crewId, added.value)) : added;
}

/** What became of a revision, with what the library says of its type now. */
export async function typeTaken(
  { store }: Pick<TaskContext, 'store'>,
  crewId: string,
  { outcome, typeId, number }: Added,
): Promise<TypeTaken> {
  const [type] = await typeSummaries(store, { crewId, typeId });
  return { outcome, number, type: present(type, `type ${typeId} was put into the library of ${crewId}`) };
}

/** The type that a file is of: the one of the same identity, when it states one, else the one of the same maker and model. */
async function sameType(tx: Prisma.TransactionClient, crewId: string, content: RevisionContent): Promise<Onto | null> {
  const { guid } = content;
  const known =
    guid === ''
      ? null
      : await tx.fixtureType.findFirst({
          where: { crewId, guid, removedAt: null },
          orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
        });
  return known ?? tx.fixtureType.findUnique({ where: { crewId_key: { crewId, key: typeKey(content) } } });
}
