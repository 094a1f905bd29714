import type { ServerResponse } from 'node:http';

/** Sends an answer; of a HEAD request only its head. */
export async function sendResponse(response: ServerResponse, answer: Response): Promise<void> {
  response.statusCode = answer.status;
  for (const [name, value] of answer.headers) if (name !== 'set-cookie') response.setHeader(name, value);
  const cookies = answer.headers.getSetCookie();
  if (cookies.length > 0) response.setHeader('set-cookie', cookies);
  const body = Buffer.from(await answer.arrayBuffer());
  response.setHeader('content-length', body.length);
  response.end(response.req.method === 'HEAD' ? undefined : body);
}
