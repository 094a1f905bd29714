import type { z } from 'zod';
import { ok, type Result, refuse } from '#base/result.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import { refusal } from './json.ts';

/** The body as the schema wants it, or the answer that says what is wrong with it. */
export function parseBody<Schema extends z.ZodType>(
  schema: Schema,
  body: string | undefined,
): Result<z.output<Schema>, Response> {
  const value = readJson(body ?? '');
  if (value === undefined) return refuse(refusal(400, 'not-json', HTTP_SENTENCES.notJson));
  const parsed = schema.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const [issue] = parsed.error.issues;
  const field = issue?.path.join('.') ?? '';
  return refuse(
    refusal(400, 'bad-request', HTTP_SENTENCES.unreadable(field, issue?.message ?? HTTP_SENTENCES.notJson)),
  );
}

function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // JSON has no undefined: the caller tells it from everything that can be sent.
    return undefined;
  }
}
