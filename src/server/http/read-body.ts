import type { IncomingMessage } from 'node:http';
import type { Clock } from '#base/clock.ts';
import { ok, type Result, refuse } from '#base/result.ts';

export interface BodyLimits {
  readonly bytes: number;
  /** Milliseconds from now until all of it has to be here. */
  readonly ms: number;
  readonly clock: Clock;
}

export type BodyTrouble = 'too-large' | 'too-slow' | 'cut-off';

/** Reads the body of a request as UTF-8, as `readBytes` does. */
export async function readBody(request: IncomingMessage, limits: BodyLimits): Promise<Result<string, BodyTrouble>> {
  const body = await readBytes(request, { ...limits, discarded: DISCARDED * limits.bytes });
  return body.ok ? ok(Buffer.from(body.value.buffer).toString('utf8')) : body;
}

/**
 * Reads the body of a request into a buffer of its own. One that is too large is read up to `discarded` bytes and thrown away, so that
 * whoever sends it gets to read why it was refused.
 */
export function readBytes(
  request: IncomingMessage,
  { bytes, discarded, ms, clock }: BodyLimits & { readonly discarded: number },
): Promise<Result<Uint8Array<ArrayBuffer>, BodyTrouble>> {
  return new Promise((resolve) => {
    let chunks: Buffer[] = [];
    let size = 0;
    const cancel = clock.after(ms, () => settle(refuse(size > bytes ? 'too-large' : 'too-slow')));
    const settle = (result: Result<Uint8Array<ArrayBuffer>, BodyTrouble>) => {
      cancel();
      chunks = [];
      request.off('data', take);
      // Nobody listens any more, but a late error must not end the process.
      request.on('error', () => undefined);
      resolve(result);
    };
    const take = (chunk: Buffer) => {
      size += chunk.length;
      if (size <= bytes) chunks.push(chunk);
      else if (size > discarded) settle(refuse('too-large'));
      else chunks = [];
    };
    request.on('data', take);
    request.once('end', () => settle(size > bytes ? refuse('too-large') : ok(joined(chunks, size))));
    request.once('error', () => settle(refuse('cut-off')));
    request.once('close', () => settle(refuse('cut-off')));
  });
}

function joined(chunks: readonly Buffer[], size: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** How many times the limit is read before the connection is cut. */
const DISCARDED = 16;
