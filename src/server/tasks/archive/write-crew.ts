import { Prisma } from '../../db/generated/client.ts';
import type { OpenedArchive } from './open-archive.ts';
import { writeRig } from './write-rig.ts';
import { writeDraft, writeType } from './write-type.ts';
import type { Writing } from './writing.ts';

const AUDIT_ROWS = 1_000;

/** Everything an archive holds, into a crew that nobody is in yet. Each statement is short: nobody's edit waits for all of it. */
export async function writeCrew(writing: Writing, archive: OpenedArchive): Promise<void> {
  await writeAbout(writing, archive);
  for await (const { folder, parts } of archive.folders()) {
    const within = { folder, parts };
    const type = archive.types.get(folder);
    const draft = archive.drafts.get(folder);
    const rig = archive.rigs.get(folder);
    if (type) await writeType(writing, type, within);
    if (draft) await writeDraft(writing, draft, within);
    if (rig) await writeRig(writing, rig, within);
    parts.end();
  }
  await writeAudit(writing, archive);
}

async function writeAbout({ context, renaming, crewId }: Writing, { crew }: OpenedArchive): Promise<void> {
  const { prisma } = context.store;
  const { name, createdAt, venues, listMappings } = crew;
  await prisma.crew.create({ data: { id: crewId, name, createdAt } });
  await prisma.venue.createMany({
    data: venues.map((venue) => ({ ...venue, id: renaming.of('venue', venue.id), crewId })),
  });
  await prisma.listMapping.createMany({
    data: listMappings.map((each) => ({ ...each, crewId, mapping: each.mapping ?? Prisma.JsonNull })),
  });
}

async function writeAudit({ context, renaming, crewId }: Writing, { audit }: OpenedArchive): Promise<void> {
  for (let from = 0; from < audit.length; from += AUDIT_ROWS)
    await context.store.prisma.auditEntry.createMany({
      data: audit.slice(from, from + AUDIT_ROWS).map(({ by, rigId, ...rest }) => ({
        ...rest,
        crewId,
        by: renaming.person(by),
        rigId: rigId === null ? null : renaming.of('rig', rigId),
      })),
    });
}
