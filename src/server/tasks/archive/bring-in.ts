import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { ArchiveTaken } from '#wire/crew-archive.ts';
import { auditEntry } from '../audit/audit-entry.ts';
import type { Doer } from '../audit/doer.ts';
import type { TaskContext } from '../task-context.ts';
import { ArchiveRefused, type ArchiveTrouble, unreadable } from './archive-refused.ts';
import { type OpenedArchive, openArchive } from './open-archive.ts';
import { type Renaming, renamingOf } from './renaming.ts';
import { noteStaged, stagedNote, unstage } from './staged-crew.ts';
import { writeCrew } from './write-crew.ts';
import type { Writing } from './writing.ts';

interface BroughtIn {
  readonly bytes: Uint8Array;
  readonly by: Doer;
}

/**
 * Makes a crew of an archive, with whoever brings it as its lead. All of the archive is checked against its manifest before anything is
 * written; what is written is nobody's until the last statement, and is taken away again if any part turns out to be unreadable.
 */
export async function bringIn(
  context: TaskContext,
  { bytes, by }: BroughtIn,
): Promise<Result<ArchiveTaken, ArchiveTrouble>> {
  try {
    const archive = await openArchive(bytes);
    const { length } = [...archive.rigs.values()].filter(({ removedAt }) => removedAt === null);
    if (length > CAPS.rigsPerCrew || archive.types.size > CAPS.typesPerCrew) throw unreadable('manifest.json');
    return ok(await store(context, archive, by));
  } catch (error) {
    if (error instanceof ArchiveRefused) return refuse(error.trouble);
    throw error;
  }
}

async function store(context: TaskContext, archive: OpenedArchive, by: Doer): Promise<ArchiveTaken> {
  const renaming = await renamingOf(context.store, archive, context.makeId);
  const crewId = renaming.of('crew', archive.crew.id);
  const writing: Writing = { context, crewId, renaming, person: personOf(archive, renaming) };
  await noteStaged(context.store, crewId, new Date(context.clock.now()));
  try {
    await writeCrew(writing, archive);
    await handOut(writing, archive, by);
  } catch (error) {
    await unstage(context.store, crewId);
    throw breaksRules(error) ? unreadable('manifest.json') : error;
  }
  const { rigs, types } = archive;
  return { crewId, crewName: archive.crew.name, rigs: rigs.size, types: types.size };
}

/** The crew is somebody's, in one transaction with what is written down of that. */
async function handOut({ context, crewId, renaming }: Writing, archive: OpenedArchive, by: Doer): Promise<void> {
  const at = new Date(context.clock.now());
  const people = archive.people.map(({ id, name }) => ({ id: renaming.person(id), name }));
  await context.store.prisma.$transaction(async (tx) => {
    const mine = await tx.membership.count({ where: { userId: by.id } });
    if (mine >= CAPS.crewsPerPerson) throw new ArchiveRefused({ code: 'too-many-crews' });
    const here = await tx.user.findMany({ where: { id: { in: people.map(({ id }) => id) } }, select: { id: true } });
    const known = new Set(here.map(({ id }) => id));
    const authors = people.filter(({ id, name }) => name !== '' && !known.has(id));
    await tx.author.createMany({ data: authors, skipDuplicates: true });
    await tx.membership.create({ data: { crewId, userId: by.id, role: 'lead' } });
    await auditEntry(tx, { crewId, by, at, kind: 'archive-in', what: { crew: archive.crew.name } });
    await tx.setting.deleteMany(stagedNote(crewId));
  });
}

function personOf({ people }: OpenedArchive, renaming: Renaming): Writing['person'] {
  const known = new Set(people.map(({ id }) => id));
  return (id) => {
    if (!known.has(id)) throw unreadable('people.json');
    return renaming.person(id);
  };
}

/** Whether the store refused what an archive says: two of one name, or something of what is not there. Codes of Prisma and of Postgres. */
function breaksRules(error: unknown): boolean {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  return ['P2002', 'P2003', '23505', '23503'].includes(code);
}
