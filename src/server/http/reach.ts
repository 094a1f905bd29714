import type { IncomingMessage } from 'node:http';
import type { Scheme } from '../auth/create-auth.ts';

/** How a request reached us. */
export interface Reach {
  readonly scheme: Scheme;
  /** Host and port the person's browser shows, lower case. */
  readonly host: string;
  readonly clientAddress: string;
}

export interface ReachConfig {
  readonly trustProxy: boolean;
  readonly publicUrl: URL | undefined;
}

/**
 * Reads how a request reached us. What a proxy says counts only when it is a proxy of ours; anybody else can write the same
 * headers. Of several client addresses the last counts, as it is the one our proxy added.
 */
export function reachOf(request: IncomingMessage, { trustProxy, publicUrl }: ReachConfig): Reach {
  const forwarded = (name: string) => (trustProxy ? lastOf(request.headers[name]) : undefined);
  const host = (forwarded('x-forwarded-host') ?? request.headers.host ?? '').toLowerCase();
  const isPublic = publicUrl?.protocol === 'https:' && publicUrl.host === host;
  const isForwarded = forwarded('x-forwarded-proto') === 'https';
  return {
    scheme: isPublic || isForwarded ? 'https' : 'http',
    host,
    clientAddress: forwarded('x-forwarded-for') ?? request.socket.remoteAddress ?? 'unknown',
  };
}

function lastOf(header: string | string[] | undefined): string | undefined {
  const text = Array.isArray(header) ? header.join(',') : header;
  return text?.split(',').at(-1)?.trim() || undefined;
}
