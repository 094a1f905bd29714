import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Clock } from '#base/clock.ts';
import { refuse } from '#base/result.ts';
import { unreachable } from '#base/unreachable.ts';
import { CAPS } from '#wire/caps.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import type { Auth, Scheme } from '../auth/create-auth.ts';
import type { ApiRequest, Route } from './api-request.ts';
import { refusal } from './json.ts';
import { matchRoute } from './match-route.ts';
import { type Reach, type ReachConfig, reachOf } from './reach.ts';
import { type BodyTrouble, readBody, readBytes } from './read-body.ts';
import { isSameOrigin } from './same-origin.ts';
import { DATA_POLICY, securityHeaders } from './security-headers.ts';
import { sendResponse } from './send-response.ts';
import type { ServePages } from './serve-pages.ts';

export interface HandlerOptions {
  readonly routes: readonly Route[];
  readonly auths: Readonly<Record<Scheme, Auth>>;
  readonly reach: ReachConfig;
  readonly clock: Clock;
  /** Serves what is not below /api; without it there are no pages. */
  readonly pages: ServePages | undefined;
  readonly report: (what: string, error: Error) => void;
}

/** The one door for HTTP: our routes below /api, pages everywhere else. Answers every request, whatever it is. */
export function createHandler(options: HandlerOptions): (request: IncomingMessage, response: ServerResponse) => void {
  return (request, response) => {
    const reach = reachOf(request, options.reach);
    for (const [name, value] of Object.entries(securityHeaders(reach.scheme))) response.setHeader(name, value);
    serve(request, response, reach, options).catch((error: unknown) => {
      options.report(`${request.method} ${pathOf(request)}`, error instanceof Error ? error : new Error(String(error)));
      if (response.headersSent) response.destroy();
      else void sendResponse(response, refusal(500, 'broken', HTTP_SENTENCES.broken));
    });
  };
}

async function serve(
  request: IncomingMessage,
  response: ServerResponse,
  reach: Reach,
  options: HandlerOptions,
): Promise<void> {
  const path = pathOf(request);
  if (options.pages && !isOurs(path)) {
    endWhenSlow(request, options.clock);
    return options.pages(request, response);
  }
  response.setHeader('content-security-policy', DATA_POLICY);
  const answer = await answerTo(request, reach, options);
  // Whatever is left of a body that was not read whole would be taken for the next request.
  if (!request.complete) response.setHeader('connection', 'close');
  await sendResponse(response, answer);
}

const PAGE_BODY_MS = 30_000;

/** Pages read bodies by themselves, or not at all: whoever goes on sending one is cut off. */
function endWhenSlow(request: IncomingMessage, clock: Clock): void {
  request.once(
    'close',
    clock.after(PAGE_BODY_MS, () => {
      if (!request.complete) request.destroy();
    }),
  );
}

async function answerTo(request: IncomingMessage, reach: Reach, options: HandlerOptions): Promise<Response> {
  // Only path and query count; a request may name any host, or an address of another form.
  const target = `http://localhost${request.url?.startsWith('/') ? request.url : '/'}`;
  if (!URL.canParse(target)) return refusal(404, 'nothing-here', HTTP_SENTENCES.noSuchDoor);
  const url = new URL(target);
  const { pathname } = url;
  if (/^\/sync(-draft)?(\/|$)/.test(pathname)) return refusal(426, 'socket-only', HTTP_SENTENCES.socketOnly);
  const match = matchRoute(options.routes, request.method ?? '', pathname);
  if (match.kind === 'nothing') return refusal(404, 'nothing-here', HTTP_SENTENCES.noSuchDoor);
  if (match.kind === 'wrong-method') {
    const allowed = match.allowed.join(', ');
    const answer = refusal(405, 'wrong-method', HTTP_SENTENCES.wrongMethod(allowed));
    answer.headers.set('allow', allowed);
    return answer;
  }
  const body = match.route.method === 'POST' ? await bodyOf(request, reach, match.route, options.clock) : undefined;
  if (body instanceof Response) return body;
  return match.route.handle(apiRequest(request, { url, body, reach, params: match.params, ...match.route }, options));
}

/** The body of a request that may change something, or why it may not. A file is left to its route. */
async function bodyOf(
  request: IncomingMessage,
  reach: Reach,
  { takes }: Route,
  clock: Clock,
): Promise<string | undefined | Response> {
  if (!isSameOrigin(request.headers, reach)) return refusal(403, 'foreign-origin', HTTP_SENTENCES.foreignOrigin);
  if (takes === 'file') return undefined;
  const body = await readBody(request, { bytes: CAPS.apiBody, ms: CAPS.apiBodyMs, clock });
  if (!body.ok) return bodyRefusal(body.error, CAPS.apiBody);
  // A form of another site can send text, but not JSON.
  if (body.value !== '' && !/^application\/json\b/i.test(request.headers['content-type'] ?? ''))
    return refusal(415, 'not-json', HTTP_SENTENCES.notJson);
  return body.value;
}

function bodyRefusal(trouble: BodyTrouble, bytes: number): Response {
  switch (trouble) {
    case 'too-large':
      return refusal(413, 'too-large', HTTP_SENTENCES.tooLarge(bytes));
    case 'too-slow':
      return refusal(408, 'too-slow', HTTP_SENTENCES.tooSlow);
    case 'cut-off':
      return refusal(400, 'cut-off', HTTP_SENTENCES.tooSlow);
    default:
      return unreachable(trouble);
  }
}

type Parts = Pick<ApiRequest, 'method' | 'url' | 'params' | 'body' | 'reach'>;

function apiRequest(
  request: IncomingMessage,
  { method, url, params, body, reach }: Parts,
  { auths, clock }: HandlerOptions,
): ApiRequest {
  const auth = auths[reach.scheme];
  const { cookie } = request.headers;
  let asked: ReturnType<Auth['userOf']> | undefined;
  const user = () => {
    asked ??= auth.userOf(cookie);
    return asked;
  };
  const file: ApiRequest['file'] = async ({ bytes, ms }) => {
    const read = await readBytes(request, { bytes, discarded: 2 * Math.max(bytes, CAPS.typeFile), ms, clock });
    return read.ok ? read : refuse(bodyRefusal(read.error, bytes));
  };
  const contentType = request.headers['content-type'] ?? '';
  return { method, url, params, body, contentType, file, cookie, reach, auth, user };
}

function isOurs(path: string): boolean {
  return /^\/(api|sync|sync-draft)(\/|$)/.test(path);
}

function pathOf(request: IncomingMessage): string {
  return (request.url ?? '/').replace(/[?#].*$/, '');
}
