import { TRPCClientError } from '@trpc/client';
import { UNREACHABLE } from '#words/screens.ts';
import type { Said } from '../message.tsx';

/** A refusal of a route that is no procedure; its message is the sentence for the person. */
export class RefusedRequest extends Error {}

/** Whether the server gave no answer at all, as opposed to a refusal. */
export function isUnreachable(error: unknown): boolean {
  if (error instanceof RefusedRequest) return false;
  return !(error instanceof TRPCClientError) || error.data === undefined || error.data === null;
}

/** What a failed request tells the person: the server's own sentence, or that it does not answer. */
export function saidOf(error: { readonly message: string }): Said {
  return isUnreachable(error) ? UNREACHABLE : { what: error.message };
}
