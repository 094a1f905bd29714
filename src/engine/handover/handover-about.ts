import type { Severity } from '../model/finding.ts';

/** What a handover file says of itself. Names are those of the day it was written; instants are ISO 8601, UTC. */
export interface HandoverAbout {
  /** Who gives it: a crew, and the person who wrote the file. */
  readonly from: { readonly crewId: string; readonly crewName: string; readonly by: string };
  readonly writtenAt: string;
  /** What the giver says with it. */
  readonly words: string;
  readonly rig: {
    readonly id: string;
    readonly name: string;
    readonly kind: 'show' | 'house';
    readonly venueName: string | null;
  };
  readonly revision: {
    readonly number: number;
    /** SHA-256 of the frozen text, hexadecimal. */
    readonly hash: string;
    readonly note: string;
    readonly by: string;
    readonly at: string;
    readonly units: number;
    readonly counts: Readonly<Record<Severity, number>>;
    /** Who answers for which of its blockers; a key is that of a finding. */
    readonly accepted: readonly { readonly key: string; readonly by: string }[];
  };
  /** The revision that the rig itself began as; null for one that began empty. */
  readonly startedFrom: {
    readonly rigId: string;
    readonly rigName: string;
    readonly crewName: string;
    readonly number: number;
    readonly hash: string;
  } | null;
}
