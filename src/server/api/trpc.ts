import { initTRPC, type TRPCError } from '@trpc/server';
import { ZodError } from 'zod';
import { HTTP_SENTENCES } from '#words/http.ts';
import type { ApiContext } from './context.ts';
import { Refused } from './refused.ts';

/**
 * The API's tRPC. Every error leaves with a sentence for the person and, when it is one, with the code of its refusal; what broke
 * inside stays in the log.
 */
export const trpc = initTRPC.context<ApiContext>().create({
  isDev: false,
  errorFormatter: ({ shape, error }) => ({
    ...shape,
    message: sentenceOf(error),
    data: { ...shape.data, refusal: error instanceof Refused ? error.refusal : null },
  }),
});

function sentenceOf(error: TRPCError): string {
  const { code, cause } = error;
  if (error instanceof Refused) return error.message;
  if (code === 'INTERNAL_SERVER_ERROR') return HTTP_SENTENCES.broken;
  if (code === 'NOT_FOUND') return HTTP_SENTENCES.noSuchDoor;
  if (cause instanceof SyntaxError) return HTTP_SENTENCES.notJson;
  const issue = cause instanceof ZodError ? cause.issues[0] : undefined;
  return issue ? HTTP_SENTENCES.unreadable(issue.path.join('.'), issue.message) : HTTP_SENTENCES.notUnderstood;
}
