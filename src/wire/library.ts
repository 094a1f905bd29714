import { z } from 'zod';
import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import type { FixtureType, Hazards } from '#engine/model/fixture-type.ts';
import type { GdtfReport } from '#engine/type/gdtf-report.ts';
import { Id } from './id.ts';
import type { Role } from './role.ts';

/** A type of a crew's library. Built-in types have the id `built-in-N` and one revision, numbered 0. */
export const TypeRef = z.object({ crewId: Id, typeId: Id });
export const RevisionRef = TypeRef.extend({ number: z.number().int().min(0).max(1_000_000) });
export const OpenDraft = z.object({
  crewId: Id,
  /** The type it becomes a revision of; null: a new type. */
  typeId: Id.nullable(),
});
/** Types of which the newest revision is asked for. */
export const NewestOf = z.object({ crewId: Id, typeIds: z.array(Id).max(2000) });
export const DraftRef = z.object({ draftId: Id });
export const PublishDraft = DraftRef.extend({ note: z.string().max(500) });

/** Where a revision came from. */
export type TypeOrigin = 'file' | 'draft' | 'built-in';

/** A type as lists and searches need it: what its newest revision says. */
export interface TypeSummary {
  readonly id: string;
  readonly maker: string;
  readonly model: string;
  readonly shortName: string;
  readonly modes: readonly ModeSummary[];
  readonly hazards: Hazards;
  /** Number and content hash of the newest revision. */
  readonly revision: number;
  readonly hash: string;
  readonly origin: TypeOrigin;
  /** When that revision was made; ISO 8601, UTC. */
  readonly changedAt: string;
}

export interface ModeSummary {
  readonly name: string;
  /** Slots of each break, break 1 first. */
  readonly footprints: readonly number[];
  readonly firmware: readonly string[];
}

export interface TypeRevisionSummary {
  readonly number: number;
  readonly hash: string;
  readonly at: string;
  /** The name of who made it; empty for a built-in type. */
  readonly by: string;
  readonly note: string;
  readonly origin: TypeOrigin;
}

export interface TypeRevision extends TypeRevisionSummary {
  readonly type: FixtureType;
  /** What its file was read as; null when it came from none. */
  readonly report: GdtfReport | null;
}

export interface NewestRevision {
  readonly typeId: string;
  readonly number: number;
  readonly hash: string;
}

/** A type with its newest revision whole, and all its revisions, newest first. */
export interface TypeDetails {
  readonly summary: TypeSummary;
  readonly newest: TypeRevision;
  readonly revisions: readonly TypeRevisionSummary[];
  readonly drafts: readonly OpenDraftSummary[];
}

export interface OpenDraftSummary {
  readonly id: string;
  readonly typeId: string | null;
  /** The revision it started from; null for a new type. */
  readonly base: number | null;
  readonly by: string;
  readonly at: string;
}

/** An open draft as the list of a crew's drafts shows it: with what stands in it as maker and model right now. */
export interface NamedDraft extends OpenDraftSummary {
  readonly maker: string;
  readonly model: string;
}

/** Once it is published, `typeId` is the type that it became a revision of. */
export interface DraftDetails extends OpenDraftSummary {
  readonly crewId: string;
  readonly crewName: string;
  /** What I am in its crew. */
  readonly role: Role;
  readonly state: 'open' | 'published' | 'dropped';
  /** The type it started from, of which modes may be kept: a revision's, or that of a built-in type. */
  readonly baseType: FixtureType | null;
}

/** What became of a file or a published draft. `same`: the library has had exactly this revision already. */
export interface TypeTaken {
  readonly outcome: 'new' | 'revision' | 'same';
  readonly type: TypeSummary;
  /** The number of the revision it is. */
  readonly number: number;
}

/** The answer to publishing a draft. `stopped`: nothing was published, because of these; the draft stays open. */
export type DraftPublished = TypeTaken | { readonly outcome: 'stopped'; readonly troubles: readonly DraftTrouble[] };

/** The answer to a `.gdtf` file that was taken. */
export interface FileTaken extends TypeTaken {
  readonly report: GdtfReport;
}

/** A rig that uses a type, read as it stands now. */
export interface TypeUse {
  readonly rigId: string;
  readonly rigName: string;
  readonly modes: readonly {
    readonly mode: string;
    readonly units: number;
    /** The revision whose copy is pinned there. */
    readonly number: number;
    readonly hash: string;
  }[];
}

/** `looked` of `rigs` rigs were looked at, those changed last first. */
export interface WhereUsed {
  readonly uses: readonly TypeUse[];
  readonly looked: number;
  readonly rigs: number;
}

/** The path of a revision as a file. */
export const typeFilePath = (crew: string, type: string, revision: number): string =>
  `/api/crews/${encodeURIComponent(crew)}/types/${encodeURIComponent(type)}/r${revision}.gdtf`;

/** Where a `.gdtf` file is sent to. */
export const typeUploadPath = (crew: string): string => `/api/crews/${encodeURIComponent(crew)}/types`;

/** The path of the sync socket of a draft. */
export const draftSyncPath = (draft: string): string => `/sync-draft/${encodeURIComponent(draft)}`;
