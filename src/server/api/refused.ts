import { TRPCError } from '@trpc/server';
import type { TRPC_ERROR_CODE_KEY } from '@trpc/server/rpc';
import type { Result } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import { REFUSAL_SENTENCES } from '#words/refusals.ts';

/** The one table from refusals to statuses. */
const CODES: Readonly<Record<Refusal, TRPC_ERROR_CODE_KEY>> = {
  'signed-out': 'UNAUTHORIZED',
  'no-such-crew': 'NOT_FOUND',
  'no-such-rig': 'NOT_FOUND',
  'no-such-venue': 'NOT_FOUND',
  'no-such-member': 'NOT_FOUND',
  'no-such-invitation': 'NOT_FOUND',
  'role-too-low': 'FORBIDDEN',
  'last-lead': 'CONFLICT',
  'name-taken': 'CONFLICT',
  'too-many': 'CONFLICT',
  'too-many-crews': 'CONFLICT',
  'invitation-gone': 'NOT_FOUND',
  'invitation-used': 'CONFLICT',
  'invitation-expired': 'CONFLICT',
  'no-such-type': 'NOT_FOUND',
  'no-such-revision': 'NOT_FOUND',
  'no-such-draft': 'NOT_FOUND',
  'draft-closed': 'CONFLICT',
  'draft-busy': 'CONFLICT',
  'built-in-type': 'CONFLICT',
  'type-name-taken': 'CONFLICT',
  'type-unnamed': 'BAD_REQUEST',
  'type-too-large': 'PAYLOAD_TOO_LARGE',
  'too-many-revisions': 'CONFLICT',
  'too-many-drafts': 'CONFLICT',
  'no-such-rig-revision': 'NOT_FOUND',
  'revision-same': 'CONFLICT',
  'blockers-open': 'CONFLICT',
  'blockers-unnamed': 'BAD_REQUEST',
  'rig-too-large': 'PAYLOAD_TOO_LARGE',
  'revision-damaged': 'CONFLICT',
  'too-many-rig-revisions': 'CONFLICT',
  'no-such-moment': 'NOT_FOUND',
  'no-such-handover': 'NOT_FOUND',
  'handover-closed': 'CONFLICT',
  'handover-own': 'CONFLICT',
  'too-many-handovers': 'CONFLICT',
  'no-house-rig': 'NOT_FOUND',
  'no-such-proposal': 'NOT_FOUND',
  'proposal-closed': 'CONFLICT',
  'proposal-unreadable': 'BAD_REQUEST',
  'too-many-proposals': 'CONFLICT',
  'no-such-removed-rig': 'NOT_FOUND',
  'name-unlike': 'BAD_REQUEST',
  'crew-too-large': 'PAYLOAD_TOO_LARGE',
};

/** A refusal on its way out of a procedure. */
export class Refused extends TRPCError {
  constructor(readonly refusal: Refusal) {
    super({ code: CODES[refusal], message: REFUSAL_SENTENCES[refusal] });
  }
}

/** The value of a result, or the refusal thrown to the edge of the API. */
export function granted<T>(result: Result<T, Refusal>): T {
  if (!result.ok) throw new Refused(result.error);
  return result.value;
}
