import { z } from 'zod';
import { CAPS } from './caps.ts';
import { Id } from './id.ts';
import { Words } from './record.ts';
import { RigRef } from './rigs.ts';

/**
 * What a show rig would leave changed in the house rig that it began as. `number`: the revision of the house rig that the edits were worked
 * out against. The edits are read by the schema of edits.
 */
export const MakeProposal = RigRef.extend({
  houseId: Id,
  number: z.number().int().min(1).max(1_000_000),
  words: Words,
  edits: z.array(z.unknown()).min(1).max(CAPS.proposalEdits),
});

/** A proposal as one of its two rigs knows it. */
export const ProposalRef = RigRef.extend({ proposalId: Id });

export const DecideProposal = ProposalRef.extend({ outcome: z.enum(['accepted', 'declined']), words: Words });

export type ProposalState = 'open' | 'accepted' | 'declined' | 'withdrawn';

/** A proposal as both sides know it. */
interface Proposal {
  readonly id: string;
  readonly state: ProposalState;
  readonly words: string;
  /** How many edits it is. */
  readonly edits: number;
  readonly by: string;
  /** When it was made, and when it was decided; ISO 8601, UTC. */
  readonly at: string;
  readonly decidedAt: string | null;
  /** What the house's crew says to it. */
  readonly answer: string;
}

/** What the crew of the show knows: of the house no more than its answer. */
export type ProposalMade = Proposal;

/** What the crew of the house knows. */
export interface ProposalReceived extends Proposal {
  readonly fromRigName: string;
  readonly fromCrewName: string;
  readonly number: number;
  readonly decidedBy: string | null;
}

export interface ProposalsOfRig {
  readonly received: readonly ProposalReceived[];
  readonly made: readonly ProposalMade[];
}

/** A proposal to be looked at: the edits, and the revision they were worked out against. */
export interface ProposalToRead {
  readonly number: number;
  readonly edits: readonly unknown[];
}
