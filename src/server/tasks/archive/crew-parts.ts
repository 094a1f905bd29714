import type { ArchivedDraft, ArchivedType } from '#wire/crew-archive.ts';
import type { PackedEntry } from '../../archive/pack.ts';
import type { Store } from '../../db/store.ts';
import { namesOf } from '../names-of.ts';
import { jsonEntry, textEntry } from './json-entry.ts';
import { logParts } from './log-parts.ts';
import type { CrewRows } from './read-crew.ts';
import { rigParts } from './rig-parts.ts';

/** The parts of a crew's archive, one after the other, each made when it is asked for. */
export async function* crewParts(store: Store, rows: CrewRows): AsyncGenerator<PackedEntry> {
  yield* aboutCrew(rows);
  yield jsonEntry('people.json', await peopleOf(store, rows));
  for (const [at, type] of rows.types.entries()) yield* typeParts(store, type, `types/${at + 1}`);
  for (const [at, draft] of rows.drafts.entries()) yield* draftParts(store, draft, `drafts/${at + 1}`);
  for (const [at, rig] of rows.rigs.entries()) yield* rigParts(store, rows, rig, `rigs/${at + 1}`);
}

const AUDIT_PART = 1_000;

function* aboutCrew({ crew, members, venues, listMappings, audit }: CrewRows): Generator<PackedEntry> {
  yield jsonEntry('crew.json', {
    id: crew.id,
    name: crew.name,
    createdAt: iso(crew.createdAt),
    venues: venues.map(({ id, name, createdAt }) => ({ id, name, createdAt: iso(createdAt) })),
    listMappings: listMappings.map(({ key, mapping, updatedAt }) => ({ key, mapping, updatedAt: iso(updatedAt) })),
  });
  yield jsonEntry(
    'members.json',
    members.map(({ user, role, joinedAt }) => ({ name: user.name, role, joinedAt: iso(joinedAt) })),
  );
  for (let from = 0; from < audit.length; from += AUDIT_PART)
    yield jsonEntry(
      `audit/${from / AUDIT_PART + 1}.json`,
      audit
        .slice(from, from + AUDIT_PART)
        .map(({ at, by, byName, kind, rigId, what }) => ({ at: iso(at), by, byName, kind, rigId, what })),
    );
}

/** Those who are named by id alone, in logs, with types and drafts, and who removed a rig: with their names, empty when nobody knows any. */
async function peopleOf(store: Store, { rigs, types, drafts }: CrewRows) {
  const authors = await store.sql.query<{ readonly author: string }>(
    `select distinct author from rig_update where rig_id = any($1::text[])
     union select distinct author from type_draft_update where draft_id = any($2::text[])`,
    [rigs.map(({ id }) => id), drafts.map(({ id }) => id)],
  );
  const ids = [
    ...authors.map(({ author }) => author),
    ...types.flatMap(({ revisions }) => revisions.map(({ by }) => by)),
    ...drafts.map(({ createdBy }) => createdBy),
    ...rigs.flatMap(({ removedBy }) => removedBy ?? []),
  ];
  const names = await namesOf(store, ids);
  return [...new Set(ids)].sort().map((id) => ({ id, name: names.get(id) ?? '' }));
}

async function* typeParts(
  { prisma }: Store,
  type: CrewRows['types'][number],
  folder: string,
): AsyncGenerator<PackedEntry> {
  const reports = new Set<number>();
  for (const { number } of type.revisions) {
    const where = { typeId_number: { typeId: type.id, number } };
    const { content, report } = await prisma.typeRevision.findUniqueOrThrow({ where });
    yield textEntry(`${folder}/revisions/${number}.json`, content);
    if (report === null) continue;
    reports.add(number);
    yield jsonEntry(`${folder}/revisions/${number}.report.json`, report);
  }
  yield jsonEntry(`${folder}/type.json`, {
    id: type.id,
    createdAt: iso(type.createdAt),
    removedAt: isoOrNull(type.removedAt),
    revisions: type.revisions.map(({ number, hash, note, origin, by, at }) => ({
      number,
      hash,
      note,
      origin,
      by,
      at: iso(at),
      report: reports.has(number),
    })),
  } satisfies ArchivedType);
}

async function* draftParts(
  { prisma, sql }: Store,
  draft: CrewRows['drafts'][number],
  folder: string,
): AsyncGenerator<PackedEntry> {
  const { id, typeId, base, state, createdBy, createdAt } = draft;
  const { baseContent } = await prisma.typeDraft.findUniqueOrThrow({ where: { id }, select: { baseContent: true } });
  const head = Number(draft.head);
  const begunAsType = baseContent !== null;
  const about: ArchivedDraft = { id, typeId, base, begunAsType, state, createdBy, createdAt: iso(createdAt), head };
  yield jsonEntry(`${folder}/draft.json`, about);
  if (baseContent !== null) yield textEntry(`${folder}/base.json`, baseContent);
  yield* logParts(sql, { kind: 'draft', id, head, folder });
}

const iso = (at: Date): string => at.toISOString();
const isoOrNull = (at: Date | null): string | null => (at === null ? null : at.toISOString());
