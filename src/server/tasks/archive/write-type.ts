import { z } from 'zod';
import { CAPS } from '#wire/caps.ts';
import type { ArchivedDraft, ArchivedType } from '#wire/crew-archive.ts';
import { Prisma } from '../../db/generated/client.ts';
import type { CheckedType } from '../../record/archive-job.ts';
import { typeKey } from '../library/type-key.ts';
import { unreadable } from './archive-refused.ts';
import { boundedText, type Folder, type Writing, writeLog } from './writing.ts';

/** A type with its revisions. */
export async function writeType(writing: Writing, type: ArchivedType, within: Folder): Promise<void> {
  const { context, renaming, crewId } = writing;
  const id = renaming.of('type', type.id);
  const { createdAt, removedAt } = type;
  const newest = type.revisions.length;
  const revisions: Prisma.TypeRevisionUncheckedCreateInput[] = [];
  let facts = { maker: '', model: '', guid: '' };
  for (const [at, revision] of type.revisions.entries()) {
    if (revision.number !== at + 1) throw unreadable(`${within.folder}/type.json`);
    const { row, ...said } = await readRevision(writing, revision, within);
    revisions.push({ ...row, typeId: id });
    facts = said.facts;
  }
  const key = removedAt === null ? typeKey(facts) : null;
  const { prisma } = context.store;
  await prisma.fixtureType.create({ data: { id, crewId, ...facts, key, newest, createdAt, removedAt } });
  for (const data of revisions) await prisma.typeRevision.create({ data });
}

async function readRevision({ context, person }: Writing, revision: ArchivedType['revisions'][number], within: Folder) {
  const name = `${within.folder}/revisions/${revision.number}`;
  const content = boundedText(within, `${name}.json`, CAPS.typeContent);
  const checked: CheckedType = await context.record.checkType(content, revision.hash);
  if (!checked.ok) throw unreadable(`${name}.json`);
  const { summary, ...facts } = checked.value;
  const report = revision.report ? within.parts.json(`${name}.report.json`, z.json()) : null;
  const stored = { summary: JSON.parse(JSON.stringify(summary)), report: report ?? Prisma.DbNull };
  return { facts, row: { ...revision, ...stored, content, by: person(revision.by) } };
}

/** A draft with its log. */
export async function writeDraft(writing: Writing, draft: ArchivedDraft, within: Folder): Promise<void> {
  const { context, renaming, crewId, person } = writing;
  const { prisma } = context.store;
  const id = renaming.of('draft', draft.id);
  const { begunAsType, head, typeId, createdBy, ...rest } = draft;
  const base = `${within.folder}/base.json`;
  const baseContent = begunAsType ? boundedText(within, base, CAPS.typeContent) : null;
  if (baseContent !== null && !(await context.record.checkType(baseContent, null)).ok) throw unreadable(base);
  await prisma.typeDraft.create({
    data: {
      ...rest,
      id,
      crewId,
      typeId: typeId === null ? null : renaming.of('type', typeId),
      baseContent,
      createdBy: person(createdBy),
      head: BigInt(head),
    },
  });
  const state = await writeLog(writing, within, { kind: 'draft', id, head });
  await prisma.typeDraftCheckpoint.create({ data: { draftId: id, ...state } });
}
