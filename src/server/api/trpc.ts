import { initTRPC } from '@trpc/server';
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
    message: sentenceOf(error.code, error.message, error.cause),
    data: { ...shape.data, refusal: error instanceof Refused ? error.refusal : null },
  }),
});

function sentenceOf(code: string, message: string, cause: unknown): string {
  if (code === 'INTERNAL_SERVER_ERROR') return HTTP_SENTENCES.broken;
  if (cause instanceof SyntaxError) return HTTP_SENTENCES.notJson;
  if (!(cause instanceof ZodError)) return message;
  const [issue] = cause.issues;
  return issue ? HTTP_SENTENCES.unreadable(issue.path.join('.'), issue.message) : message;
}
