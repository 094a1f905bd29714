import type { IncomingHttpHeaders } from 'node:http';

/**
 * Whether a socket was opened by a page of ours: its Origin names the host the request was sent to, or is one of `also`. A cookie
 * goes along with a socket that any page opens, so that nothing else keeps other sites out (RFC 6455, 10.2).
 */
export function originAllowed(headers: IncomingHttpHeaders, also: readonly string[]): boolean {
  const { origin, host } = headers;
  if (origin === undefined || host === undefined || !URL.canParse(origin)) return false;
  return new URL(origin).host === host.toLowerCase() || also.includes(origin);
}
