import { z } from 'zod';
import type { Severity } from '#engine/model/finding.ts';
import { Id } from './id.ts';
import { Name } from './name.ts';
import { RigKind, RigRef } from './rigs.ts';

/** A revision of a rig, by its number. */
export const RigRevisionRef = RigRef.extend({ number: z.number().int().min(1).max(1_000_000) });

/** What is said with a revision, an offer or an answer. */
export const Words = z
  .string()
  .trim()
  .max(2000)
  .regex(/^[^\0\p{Cs}]*$/u, 'This text holds signs that cannot be kept. Type it again.');

/** `accepted`: the blockers, by `blockerKey`, of which a named person says that the revision may have them. */
export const FreezeRig = RigRef.extend({
  note: Words,
  accepted: z.object({ by: Words.max(120), keys: z.array(z.string().max(32)).max(5_000) }),
});

/** A rig of a crew that begins as a revision of another: whoever may read that one may start from it. */
export const StartRig = RigRevisionRef.extend({
  crewId: Id,
  name: Name,
  kind: RigKind,
  venueId: Id.nullable().default(null),
});

/** A blocker that somebody answers for by name. `key` is its `blockerKey`. */
export interface AcceptedBlocker {
  readonly key: string;
  readonly by: string;
}

export interface RigRevisionSummary {
  readonly number: number;
  /** SHA-256 of its frozen text, hexadecimal. */
  readonly hash: string;
  readonly note: string;
  readonly units: number;
  readonly counts: Readonly<Record<Severity, number>>;
  readonly accepted: readonly AcceptedBlocker[];
  readonly by: string;
  /** When it was frozen; ISO 8601, UTC. */
  readonly at: string;
}

/** What a rig began as, for ever. The names are those of that day: the rig may be another crew's, another installation's, or gone. */
export const Provenance = z.object({
  rigId: z.string(),
  rigName: z.string(),
  rigKind: RigKind,
  crewId: z.string(),
  crewName: z.string(),
  venueName: z.string().nullable(),
  number: z.number().int(),
  hash: z.string(),
  /** When that happened; ISO 8601, UTC. */
  at: z.string(),
  way: z.enum(['started', 'handover', 'file']),
});
export type Provenance = z.infer<typeof Provenance>;

/** What is kept of a revision: the frozen rig, or what the rules said of it on that day. */
export const REVISION_PARTS = ['rig', 'findings'] as const;
export type RevisionPart = (typeof REVISION_PARTS)[number];

export const revisionPath = (rigId: string, number: number, part: RevisionPart): string =>
  `/api/rigs/${encodeURIComponent(rigId)}/revisions/${number}/${part}`;
