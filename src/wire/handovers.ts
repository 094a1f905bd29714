import { z } from 'zod';
import type { Severity } from '#engine/model/finding.ts';
import { Id } from './id.ts';
import { Name } from './name.ts';
import { type RevisionPart, RigRevisionRef, Words } from './record.ts';
import { RigKind, RigRef } from './rigs.ts';

/** The secret part of the link of an offer. */
const HandoverToken = z.string().regex(/^[a-z0-9]{1,64}$/, 'This is not the link of a handover.');

export const OfferHandover = RigRevisionRef.extend({ words: Words });
export const WithdrawHandover = RigRef.extend({ handoverId: Id });
export const HandoverRef = z.object({ token: HandoverToken });

/** The rig that a receiving crew makes of what it is given. */
const NewRig = z.object({ crewId: Id, name: Name, kind: RigKind, venueId: Id.nullable().default(null) });
export const AcceptHandover = HandoverRef.extend({ ...NewRig.shape, words: Words });
export type AcceptHandover = z.infer<typeof AcceptHandover>;

/** `crewId`: the crew on whose behalf; null when somebody speaks for none. */
export const DeclineHandover = HandoverRef.extend({ words: Words, crewId: Id.nullable().default(null) });

export interface NewHandover {
  readonly id: string;
  /** Path of the link, `/handover/<token>`; the page puts its own address in front. */
  readonly path: string;
  /** ISO 8601, UTC. */
  readonly expiresAt: string;
}

/** `expired`: nobody answered in time. */
export type HandoverState = 'offered' | 'accepted' | 'declined' | 'withdrawn' | 'expired';

/** An offer as the crew that made it, or the one that answered it, sees it. Instants are ISO 8601, UTC. */
export interface HandoverSummary {
  readonly id: string;
  /** `given` by the crew that asks, or `received` by it. */
  readonly way: 'given' | 'received';
  readonly crewName: string;
  readonly rigId: string;
  readonly rigName: string;
  readonly number: number;
  readonly words: string;
  readonly by: string;
  readonly at: string;
  readonly expiresAt: string;
  readonly state: HandoverState;
  /** Who answered, when, in which words, and for which crew; of an offer that was taken back, who did that and when. */
  readonly decidedBy: string | null;
  readonly decidedAt: string | null;
  readonly answer: string;
  readonly toCrewName: string | null;
  /** The rig that the receiving crew made of it; told to that crew alone. */
  readonly receivedId: string | null;
}

/** Where a crew of mine holds what it last had of an offered rig: a revision of a rig of its own. */
export interface LastHad {
  readonly crewId: string;
  readonly rigId: string;
  readonly rigName: string;
  readonly number: number;
  /** When that came to the crew; ISO 8601, UTC. */
  readonly at: string;
}

/** What is handed over, as whoever may receive it sees it. Instants are ISO 8601, UTC. */
export interface OfferedRevision {
  readonly crewName: string;
  readonly rigName: string;
  readonly rigKind: RigKind;
  readonly venueName: string | null;
  readonly number: number;
  /** SHA-256 of the frozen text, hexadecimal. */
  readonly hash: string;
  readonly note: string;
  readonly words: string;
  readonly units: number;
  readonly counts: Readonly<Record<Severity, number>>;
  /** Who gives it, and when. */
  readonly by: string;
  readonly at: string;
  readonly frozenAt: string;
  /** One for each crew of mine that had something of this rig before. */
  readonly lastHad: readonly LastHad[];
}

/** `receivedId`: the rig that a crew of mine made of it; null while it is open. */
export interface HandoverLook extends OfferedRevision {
  readonly expiresAt: string;
  readonly receivedId: string | null;
  /** The giving crew, when it is one of mine: it cannot be the receiving one. */
  readonly giverId: string | null;
}

export const handoverPath = (token: string, part: RevisionPart): string =>
  `/api/handovers/${encodeURIComponent(token)}/${part}`;

/** What goes into a handover file beside the revision. */
export const WriteHandoverFile = z.object({ words: Words });

/** The rig that is made of a handover file. */
export const ReceiveFile = NewRig.omit({ crewId: true });
export type ReceiveFile = z.infer<typeof ReceiveFile>;

/** What a file brings, before anything is made of it. */
export interface HandoverFileLook extends OfferedRevision {
  /** The rig that this crew made of the same revision before; null when there is none. */
  readonly here: { readonly rigId: string; readonly rigName: string; readonly at: string } | null;
  /** The frozen rig, and its findings as JSON: each deflated, in base64. */
  readonly rig: string;
  readonly findings: string;
}

export const handoverFilePath = (rigId: string, number: number): string =>
  `/api/rigs/${encodeURIComponent(rigId)}/revisions/${number}/handover-file`;

/** Where a handover file is sent: to be looked at, or to be made a rig of the crew, with `?name=…&kind=…&venueId=…`. */
export const handoverFileLookPath = (crewId: string): string =>
  `/api/crews/${encodeURIComponent(crewId)}/handovers/look`;
export const handoverFileTakePath = (crewId: string): string => `/api/crews/${encodeURIComponent(crewId)}/handovers`;
