import { createHash } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { pagePolicy } from './security-headers.ts';

export type ServePages = (request: IncomingMessage, response: ServerResponse) => Promise<void>;

/**
 * Serves pages so that each names the inline scripts it came with, by hash, in its policy: whatever somebody managed to smuggle into
 * a page is not among them and does not run. For that a page is held back until it is whole; everything else passes through.
 */
export function serveWithPolicy(pages: ServePages, hostOf: (request: IncomingMessage) => string): ServePages {
  return (request, response) => {
    if (!(request.headers.accept ?? '').includes('text/html')) return pages(request, response);
    // A compressed page could not be read here.
    delete request.headers['accept-encoding'];
    holdPage(response, (html) => pagePolicy(inlineScriptHashes(html), hostOf(request)));
    return pages(request, response);
  };
}

const INLINE_SCRIPT = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g;

/** The SHA-256 of every inline script of a page, as a content security policy names them (W3C CSP 3, 8.2). */
export function inlineScriptHashes(html: string): readonly string[] {
  const scripts = [...html.matchAll(INLINE_SCRIPT)].map(([, script = '']) => script);
  return [...new Set(scripts.map((script) => createHash('sha256').update(script).digest('base64')))];
}

type Chunk = string | Uint8Array;

function holdPage(response: ServerResponse, policyOf: (html: string) => string): void {
  const held: Buffer[] = [];
  const { write, end, writeHead, flushHeaders } = response;
  const isPage = () => String(response.getHeader('content-type') ?? '').startsWith('text/html');
  const keep = (chunk: unknown, encoding: unknown) => {
    if (typeof chunk === 'string')
      held.push(Buffer.from(chunk, typeof encoding === 'string' ? asEncoding(encoding) : 'utf8'));
    else if (chunk instanceof Uint8Array) held.push(Buffer.from(chunk));
  };
  const callback = (...candidates: readonly unknown[]) => {
    const found = candidates.find((candidate) => typeof candidate === 'function');
    if (typeof found === 'function') queueMicrotask(() => found());
  };
  response.flushHeaders = () => {
    if (!isPage()) flushHeaders.call(response);
  };
  response.writeHead = ((status: number, ...rest: unknown[]) => {
    response.statusCode = status;
    for (const headers of rest) if (headers && typeof headers === 'object') setAll(response, headers);
    return isPage() ? response : writeHead.call(response, status);
  }) as typeof writeHead;
  response.write = ((chunk: Chunk, encoding?: unknown, done?: unknown) => {
    if (!isPage()) return write.call(response, chunk, encoding as BufferEncoding, done as () => void);
    keep(chunk, encoding);
    callback(encoding, done);
    return true;
  }) as typeof write;
  response.end = ((chunk?: unknown, encoding?: unknown, done?: unknown) => {
    if (!isPage()) return end.call(response, chunk, encoding as BufferEncoding, done as () => void);
    keep(chunk, encoding);
    const page = Buffer.concat(held);
    response.setHeader('content-security-policy', policyOf(page.toString('utf8')));
    response.setHeader('content-length', page.length);
    response.removeHeader('transfer-encoding');
    callback(chunk, encoding, done);
    // The real end writes the head by whatever writeHead the response has.
    Object.assign(response, { write, end, writeHead, flushHeaders });
    return end.call(response, response.req.method === 'HEAD' ? '' : page, 'utf8');
  }) as typeof end;
}

const asEncoding = (name: string) => (Buffer.isEncoding(name) ? name : 'utf8');

function setAll(response: ServerResponse, headers: object): void {
  for (const [name, value] of Object.entries(headers)) if (value !== undefined) response.setHeader(name, value);
}
