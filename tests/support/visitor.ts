import { WebSocket } from 'ws';
import { assert, present } from '#base/assert.ts';
import { randomId } from '#base/random-id.ts';
import { appRouter } from '#server/api/router.ts';
import { draftSyncPath } from '#wire/library.ts';
import { syncPath } from '#wire/sync/message.ts';

/** An answer of the server, as text, so that two can be compared to the byte. */
export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly headers: Headers;
}

interface Sent {
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

/** Somebody with a cookie jar, who asks by HTTP and by socket as a page of ours would. */
export interface Visitor {
  readonly userId: string;
  readonly cookie: string;
  signUp(name: string): Promise<void>;
  request(method: string, path: string, sent?: Sent): Promise<Answer>;
  /** Calls a procedure of the router by its path, such as `rigs.create`. */
  call(procedure: string, input?: unknown): Promise<Answer>;
  /** The same, when it has to be granted: what it answered. */
  granted<T>(procedure: string, input?: unknown): Promise<T>;
  socket(rigId: string, headers?: Readonly<Record<string, string>>): WebSocket;
  draftSocket(draftId: string, headers?: Readonly<Record<string, string>>): WebSocket;
}

export function newVisitor(url: string): Visitor {
  const jar = new Map<string, string>();
  let userId = '';
  const cookie = () => [...jar].map(([name, value]) => `${name}=${value}`).join('; ');

  const request = async (method: string, path: string, { body, headers }: Sent = {}): Promise<Answer> => {
    const response = await fetch(`${url}${path}`, {
      method,
      headers: {
        ...(jar.size > 0 ? { cookie: cookie() } : {}),
        ...(method === 'GET' ? {} : { origin: url, 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: isRaw(body) ? body : JSON.stringify(body) }),
      ...(body instanceof ReadableStream ? { duplex: 'half' as const } : {}),
      redirect: 'manual',
    });
    for (const line of response.headers.getSetCookie()) keep(jar, line);
    return { status: response.status, text: await response.text(), headers: response.headers };
  };

  const call = (procedure: string, input?: unknown): Promise<Answer> => {
    if (kindOf(procedure) === 'mutation') return request('POST', `/api/trpc/${procedure}`, { body: input ?? {} });
    const query = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`;
    return request('GET', `/api/trpc/${procedure}${query}`);
  };

  const open = (path: string, headers: Readonly<Record<string, string>> = {}) =>
    new WebSocket(`${url.replace(/^http/, 'ws')}${path}`, {
      headers: { origin: url, ...(jar.size > 0 ? { cookie: cookie() } : {}), ...headers },
    });

  return {
    get userId() {
      return userId;
    },
    get cookie() {
      return cookie();
    },
    signUp: async (name) => {
      const email = `${randomId()}@crew.example`;
      const answer = await request('POST', '/api/auth/sign-up/email', { body: { name, email, password: randomId() } });
      assert(answer.status === 200, `signing up was refused: ${answer.text}`);
      userId = JSON.parse(answer.text).user.id;
    },
    request,
    call,
    granted: async (procedure, input) => {
      const answer = await call(procedure, input);
      assert(answer.status === 200, `${procedure} was refused: ${answer.text}`);
      return JSON.parse(answer.text).result.data;
    },
    socket: (rigId, headers) => open(syncPath(rigId), headers),
    draftSocket: (draftId, headers) => open(draftSyncPath(draftId), headers),
  };
}

/** Text, bytes and streams are sent as they are, everything else as JSON. */
const isRaw = (body: unknown): body is string | Uint8Array<ArrayBuffer> | ReadableStream =>
  typeof body === 'string' || body instanceof Uint8Array || body instanceof ReadableStream;

function keep(jar: Map<string, string>, line: string): void {
  const [pair = ''] = line.split(';');
  const split = pair.indexOf('=');
  const [name, value] = [pair.slice(0, split), pair.slice(split + 1)];
  if (value === '' || /max-age=0/i.test(line)) jar.delete(name);
  else jar.set(name, value);
}

/** Every procedure of the router by its path, and whether it changes anything. */
export const PROCEDURES: ReadonlyMap<string, 'query' | 'mutation'> = new Map(
  Object.entries(appRouter._def.procedures).map(([path, procedure]) => [path, typeOf(path, procedure)]),
);

// The type of the router says that procedures are nested; what it keeps is one flat list of them by path.
function typeOf(path: string, procedure: unknown): 'query' | 'mutation' {
  const type = (procedure as { readonly _def?: { readonly type?: unknown } })._def?.type;
  assert(type === 'query' || type === 'mutation', `${path} is neither a query nor a mutation: ${String(type)}`);
  return type;
}

function kindOf(procedure: string): string {
  return present(PROCEDURES.get(procedure), `no procedure ${procedure}`);
}
