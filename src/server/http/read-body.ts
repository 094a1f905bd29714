import type { IncomingMessage } from 'node:http';
import type { Clock } from '#base/clock.ts';
import { ok, type Result, refuse } from '#base/result.ts';

export interface BodyLimits {
  readonly bytes: number;
  /** Milliseconds from now until all of it has to be here. */
  readonly ms: number;
  readonly clock: Clock;
}

/**
 * Reads the body of a request as UTF-8. One that is too large is read a while longer and thrown away, so that whoever sends it gets to
 * read why it was refused.
 */
export function readBody(
  request: IncomingMessage,
  { bytes, ms, clock }: BodyLimits,
): Promise<Result<string, 'too-large' | 'too-slow' | 'cut-off'>> {
  return new Promise((resolve) => {
    const chunks: Buffer[] = [];
    let size = 0;
    const cancel = clock.after(ms, () => settle(refuse(size > bytes ? 'too-large' : 'too-slow')));
    const settle = (result: Result<string, 'too-large' | 'too-slow' | 'cut-off'>) => {
      cancel();
      request.off('data', take);
      // Nobody listens any more, but a late error must not end the process.
      request.on('error', () => undefined);
      resolve(result);
    };
    const take = (chunk: Buffer) => {
      size += chunk.length;
      if (size <= bytes) chunks.push(chunk);
      else if (size > DISCARDED * bytes) settle(refuse('too-large'));
    };
    request.on('data', take);
    request.once('end', () => settle(size > bytes ? refuse('too-large') : ok(Buffer.concat(chunks).toString('utf8'))));
    request.once('error', () => settle(refuse('cut-off')));
    request.once('close', () => settle(refuse('cut-off')));
  });
}

/** How many times the limit is read before the connection is cut. */
const DISCARDED = 16;
