import { fetchRequestHandler } from '@trpc/server/adapters/fetch';
import { CAPS } from '#wire/caps.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import type { ApiContext } from '../../api/context.ts';
import { appRouter } from '../../api/router.ts';
import type { TaskContext } from '../../tasks/task-context.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';

export interface TrpcOptions {
  readonly tasks: TaskContext;
  readonly demo: boolean;
  readonly report: (what: string, error: Error) => void;
}

/** The procedures of `api/router.ts`, several of them in one request if the page asks so. */
export function trpcRoutes(options: TrpcOptions): readonly Route[] {
  const handle = (request: ApiRequest) => callProcedures(request, options);
  return [
    { method: 'GET', path: '/api/trpc/:procedures', handle },
    { method: 'POST', path: '/api/trpc/:procedures', handle },
  ];
}

async function callProcedures(request: ApiRequest, { tasks, demo, report }: TrpcOptions): Promise<Response> {
  const calls = (request.params.procedures ?? '').split(',').length;
  if (calls > CAPS.apiBatch) return refusal(400, 'too-many-calls', HTTP_SENTENCES.tooManyCalls(CAPS.apiBatch));
  const createContext = async (): Promise<ApiContext> => ({
    ...tasks,
    user: await request.user(),
    demo,
    secure: request.reach.scheme === 'https',
  });
  const response = await fetchRequestHandler({
    endpoint: '/api/trpc',
    router: appRouter,
    req: toFetch(request),
    createContext,
    onError: ({ error, path }) => {
      if (error.code === 'INTERNAL_SERVER_ERROR') report(`procedure ${path}`, error.cause ?? error);
    },
  });
  response.headers.set('cache-control', 'no-store');
  return response;
}

function toFetch({ method, url, body }: ApiRequest): Request {
  if (method === 'GET') return new Request(url, { method });
  return new Request(url, { method, headers: { 'content-type': 'application/json' }, body: body ?? '' });
}
