import { promisify } from 'node:util';
import { inflate } from 'node:zlib';
import { present } from '#base/assert.ts';
import { CAPS } from '#wire/caps.ts';
import type { ArchivedDraft, ArchivedRig, ArchivedType } from '#wire/crew-archive.ts';
import type { Provenance } from '#wire/record.ts';
import type { PackedEntry } from '../../archive/pack.ts';
import type { Store } from '../../db/store.ts';
import { namesOf } from '../names-of.ts';
import { jsonEntry, textEntry } from './json-entry.ts';
import { logParts } from './log-parts.ts';
import type { CrewRows } from './read-crew.ts';

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

async function* rigParts(
  { prisma, sql }: Store,
  rows: CrewRows,
  rig: CrewRows['rigs'][number],
  folder: string,
): AsyncGenerator<PackedEntry> {
  yield jsonEntry(`${folder}/rig.json`, aboutRig(rows, rig));
  for (const { number } of rig.revisions) {
    const where = { rigId_number: { rigId: rig.id, number } };
    const { content, findings } = await prisma.rigRevision.findUniqueOrThrow({
      where,
      select: { content: true, findings: true },
    });
    yield { name: `${folder}/revisions/${number}.json`, bytes: await inflated(content) };
    yield { name: `${folder}/revisions/${number}.findings.json`, bytes: await inflated(findings) };
  }
  yield* logParts(sql, { kind: 'rig', id: rig.id, head: Number(rig.head), folder });
}

function aboutRig({ handovers }: CrewRows, rig: CrewRows['rigs'][number]): ArchivedRig {
  const { id, name, kind, venueId, createdAt, removedAt, removedBy, startedFrom, head, revisions, proposals } = rig;
  return {
    id,
    name,
    kind,
    venueId,
    createdAt: iso(createdAt),
    removedAt: isoOrNull(removedAt),
    removedBy,
    // Written by `storeNewRig` and never changed since, as what is frozen and accepted is by `freezeRig`.
    startedFrom: startedFrom as unknown as Provenance | null,
    head: Number(head),
    revisions: revisions.map(({ rigId: _, seq, at, counts, accepted, ...rest }) => ({
      ...rest,
      seq: Number(seq),
      at: iso(at),
      counts: counts as unknown as ArchivedRig['revisions'][number]['counts'],
      accepted: accepted as unknown as ArchivedRig['revisions'][number]['accepted'],
    })),
    handovers: handovers
      .filter(({ rigId }) => rigId === id)
      .map(({ rigId: _, crewId: __, createdAt, decidedAt, expiresAt, ...rest }) => ({
        ...rest,
        createdAt: iso(createdAt),
        decidedAt: isoOrNull(decidedAt),
        expiresAt: iso(expiresAt),
      })),
    proposals: proposals.map(({ rigId: _, edits, createdAt, decidedAt, ...rest }) => ({
      ...rest,
      edits: present(edits, 'a proposal without edits') as ArchivedRig['proposals'][number]['edits'],
      createdAt: iso(createdAt),
      decidedAt: isoOrNull(decidedAt),
    })),
  };
}

const inflate_ = promisify<Uint8Array, { maxOutputLength: number }, Buffer>(inflate);
const inflated = (bytes: Uint8Array) => inflate_(bytes, { maxOutputLength: CAPS.archivePart });

const iso = (at: Date): string => at.toISOString();
const isoOrNull = (at: Date | null): string | null => (at === null ? null : at.toISOString());
