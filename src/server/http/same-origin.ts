import type { IncomingHttpHeaders } from 'node:http';
import type { Reach } from './reach.ts';

/**
 * Whether a request was made by a page of ours: its Origin is the very host it was sent to, and HTTPS where that is HTTPS. Cookies go
 * along with requests of other pages too, so that every request that changes something has to pass here.
 */
export function isSameOrigin(headers: IncomingHttpHeaders, { host, scheme }: Reach): boolean {
  const { origin } = headers;
  if (origin === undefined || host === '' || !URL.canParse(origin)) return false;
  const from = new URL(origin);
  return from.host === withoutDefaultPort(host, from.protocol) && (scheme === 'http' || from.protocol === 'https:');
}

function withoutDefaultPort(host: string, protocol: string): string {
  return URL.canParse(`${protocol}//${host}`) ? new URL(`${protocol}//${host}`).host : host;
}
