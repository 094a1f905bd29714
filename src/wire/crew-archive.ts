import { z } from 'zod';
import { AUDIT_KINDS } from './audit.ts';
import { CAPS } from './caps.ts';
import { Id } from './id.ts';
import { Provenance } from './record.ts';
import { RigKind } from './rigs.ts';
import { Role } from './role.ts';

/** The version of the format. `src/server/README.md` describes it; what is written here is what may stand in each of its parts. */
export const ARCHIVE_FORMAT = 1;

const Moment = z.string().refine((text) => isMoment(text), 'This is no moment in UTC.');
const Hash = z.string().regex(/^[0-9a-f]{64}$/);
const text = (most: number) => z.string().max(most);
const count = z.number().int().min(0);
const named = text(1000);

function isMoment(iso: string): boolean {
  const at = new Date(iso);
  return !Number.isNaN(at.getTime()) && at.toISOString() === iso;
}

/** `manifest.json`: what the archive is, and what each of its parts has to be. `seal` is the SHA-256 of the manifest without it. */
export const ArchiveManifest = z.strictObject({
  format: z.number().int().min(1),
  program: text(200),
  at: Moment,
  crew: z.strictObject({ id: Id, name: named }),
  counts: z.strictObject({ rigs: count, types: count, drafts: count }),
  parts: z.array(z.strictObject({ name: text(200), size: count, sha256: Hash })).max(CAPS.archiveParts),
  seal: Hash,
});
export type ArchiveManifest = z.infer<typeof ArchiveManifest>;

/** `crew.json` */
export const ArchivedCrew = z.strictObject({
  id: Id,
  name: named,
  createdAt: Moment,
  venues: z.array(z.strictObject({ id: Id, name: named, createdAt: Moment })).max(CAPS.venuesPerCrew),
  listMappings: z
    .array(z.strictObject({ key: text(CAPS.listKeyLength), mapping: z.json(), updatedAt: Moment }))
    .max(CAPS.listMappingsPerCrew),
});

/** `members.json`: who was in the crew as what. Nobody of them is let into the crew that is made of the archive. */
export const ArchivedMembers = z
  .array(z.strictObject({ name: named, role: Role, joinedAt: Moment }))
  .max(CAPS.membersPerCrew);

/** `people.json`: the names of those whom other parts name by id alone. */
export const ArchivedPeople = z.array(z.strictObject({ id: Id, name: named })).max(100_000);

/** `audit/N.json`, the oldest entries first. */
export const ArchivedAudit = z.array(
  z.strictObject({
    at: Moment,
    by: text(64),
    byName: named,
    kind: z.enum(AUDIT_KINDS),
    rigId: Id.nullable(),
    what: z.record(text(100), z.union([text(5000), z.number(), z.boolean(), z.null()])),
  }),
);

const ArchivedRigRevision = z.strictObject({
  number: z.number().int().min(1).max(CAPS.revisionsPerRig),
  hash: Hash,
  seq: count,
  note: text(5000),
  units: count,
  counts: z.strictObject({ blocker: count, caution: count, note: count }),
  accepted: z.array(z.strictObject({ key: text(10_000), by: named })),
  by: text(64),
  byName: named,
  at: Moment,
});

const decided = {
  words: text(5000),
  createdBy: text(64),
  createdByName: named,
  createdAt: Moment,
  decidedBy: text(64).nullable(),
  decidedByName: named.nullable(),
  decidedAt: Moment.nullable(),
  answer: text(5000),
};

/** An offer as it is remembered: without what would lead to it. */
const ArchivedHandover = z.strictObject({
  id: Id,
  number: z.number().int().min(1),
  state: z.enum(['offered', 'accepted', 'declined', 'withdrawn']),
  expiresAt: Moment,
  toCrewId: Id.nullable(),
  toCrewName: named.nullable(),
  receivedId: Id.nullable(),
  ...decided,
});

const ArchivedProposal = z.strictObject({
  id: Id,
  fromRigId: Id,
  fromRigName: named,
  fromCrewId: Id,
  fromCrewName: named,
  number: z.number().int().min(1),
  edits: z.json(),
  state: z.enum(['open', 'accepted', 'declined', 'withdrawn']),
  ...decided,
});

/** `rigs/N/rig.json`. `head` is how many updates its log has. */
export const ArchivedRig = z.strictObject({
  id: Id,
  name: named,
  kind: RigKind,
  venueId: Id.nullable(),
  createdAt: Moment,
  removedAt: Moment.nullable(),
  removedBy: text(64).nullable(),
  startedFrom: Provenance.nullable(),
  head: z.number().int().min(1),
  revisions: z.array(ArchivedRigRevision),
  handovers: z.array(ArchivedHandover),
  proposals: z.array(ArchivedProposal),
});
export type ArchivedRig = z.infer<typeof ArchivedRig>;

/** `…/log/N.json`: who sent each update of `…/log/N.bin`, when, and how many bytes of it are theirs. The first has the number `from`. */
export const ArchivedLog = z.strictObject({
  from: z.number().int().min(1),
  updates: z.array(z.tuple([text(64), Moment, count])).max(CAPS.archiveLogRows),
});
export type ArchivedLog = z.infer<typeof ArchivedLog>;

/** `types/N/type.json`. What a revision says is in `types/N/revisions/M.json`, what its file was read as in `M.report.json`. */
export const ArchivedType = z.strictObject({
  id: Id,
  createdAt: Moment,
  removedAt: Moment.nullable(),
  revisions: z
    .array(
      z.strictObject({
        number: z.number().int().min(1).max(CAPS.revisionsPerType),
        hash: Hash,
        note: text(5000),
        origin: z.enum(['file', 'draft']),
        by: text(64),
        at: Moment,
        report: z.boolean(),
      }),
    )
    .min(1),
});
export type ArchivedType = z.infer<typeof ArchivedType>;

/** `drafts/N/draft.json`. The type it began as is in `drafts/N/base.json`, if it began as one. */
export const ArchivedDraft = z.strictObject({
  id: Id,
  typeId: Id.nullable(),
  base: z.number().int().nullable(),
  begunAsType: z.boolean(),
  state: z.enum(['open', 'published', 'dropped']),
  createdBy: text(64),
  createdAt: Moment,
  head: z.number().int().min(1),
});
export type ArchivedDraft = z.infer<typeof ArchivedDraft>;

/** Where a crew's archive is taken out. */
export const archivePath = (crew: string): string => `/api/crews/${encodeURIComponent(crew)}/archive`;

/** Where an archive is brought in. */
export const ARCHIVE_IN_PATH = '/api/archives';

/** The answer to an archive that was brought in: the crew that was made of it. */
export interface ArchiveTaken {
  readonly crewId: string;
  readonly crewName: string;
  readonly rigs: number;
  readonly types: number;
}

/** Why an archive was not brought in, beside what may be wrong with any zip. `part` is a name as the archive spells it. */
export type ArchiveFault =
  | { readonly code: 'no-manifest' }
  | { readonly code: 'manifest-changed' }
  | { readonly code: 'archive-newer'; readonly format: number }
  | { readonly code: 'part-missing'; readonly part: string }
  | { readonly code: 'part-added'; readonly part: string }
  | { readonly code: 'part-changed'; readonly part: string }
  | { readonly code: 'part-unreadable'; readonly part: string };
