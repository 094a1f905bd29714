import { z } from 'zod';
import { DEMO_PEOPLE } from '#demo/demo-people.ts';
import { TOO_MANY_ATTEMPTS } from '#words/auth.ts';
import { HTTP_SENTENCES } from '#words/http.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import type { Attempts } from '../attempts.ts';
import { json, refusal } from '../json.ts';
import { parseBody } from '../parse-body.ts';

const Enter = z.object({ as: z.enum(['designer', 'technician']) });

/** `POST /api/demo/enter`: in as one of the demo's people, without a password. Where there is no demo there is no such address. */
export function demoRoute({ demo, attempts }: { readonly demo: boolean; readonly attempts: Attempts }): Route {
  return {
    method: 'POST',
    path: '/api/demo/enter',
    handle: async (request) =>
      demo ? enter(request, attempts) : refusal(404, 'nothing-here', HTTP_SENTENCES.noSuchDoor),
  };
}

async function enter({ body, auth, reach }: ApiRequest, attempts: Attempts): Promise<Response> {
  const wanted = parseBody(Enter, body);
  if (!wanted.ok) return wanted.error;
  if (!attempts.allow(reach.clientAddress)) return refusal(429, 'too-many-attempts', TOO_MANY_ATTEMPTS);
  const { id, name } = DEMO_PEOPLE[wanted.value.as];
  return json(200, { user: { id, name } }, { 'set-cookie': await auth.beginSession(id) });
}
