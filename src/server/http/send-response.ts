import type { ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

/** Sends an answer as fast as the other side takes it; of a HEAD request only its head. */
export async function sendResponse(response: ServerResponse, answer: Response): Promise<void> {
  response.statusCode = answer.status;
  for (const [name, value] of answer.headers) if (name !== 'set-cookie') response.setHeader(name, value);
  const cookies = answer.headers.getSetCookie();
  if (cookies.length > 0) response.setHeader('set-cookie', cookies);
  if (response.req.method === 'HEAD' || !answer.body) {
    await answer.body?.cancel();
    response.end();
    return;
  }
  try {
    await pipeline(Readable.from(answer.body), response);
  } catch (error) {
    // Somebody hung up in the middle: nobody is left to tell.
    if ((error as NodeJS.ErrnoException).code !== 'ERR_STREAM_PREMATURE_CLOSE') throw error;
  }
}
