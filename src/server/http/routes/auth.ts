import type { z } from 'zod';
import { SignIn, SignUp } from '#wire/account.ts';
import { AUTH_SENTENCES, TOO_MANY_ATTEMPTS } from '#words/auth.ts';
import type { Revoke } from '../../access/revocation.ts';
import type { ApiRequest, Route } from '../api-request.ts';
import { refusal } from '../json.ts';
import { parseBody } from '../parse-body.ts';

/** The account addresses that are open. better-auth has many more; whatever is not listed here does not exist. */
export function authRoutes({ revoke }: { readonly revoke: Revoke }): readonly Route[] {
  return [
    { method: 'POST', path: '/api/auth/sign-up/email', handle: (request) => withBody(request, SignUp) },
    { method: 'POST', path: '/api/auth/sign-in/email', handle: (request) => withBody(request, SignIn) },
    { method: 'POST', path: '/api/auth/sign-out', handle: (request) => signOut(request, revoke) },
    { method: 'GET', path: '/api/auth/get-session', handle: (request) => pass(request, undefined) },
  ];
}

async function withBody(request: ApiRequest, schema: z.ZodType): Promise<Response> {
  const body = parseBody(schema, request.body);
  return body.ok ? pass(request, JSON.stringify(body.value)) : body.error;
}

async function signOut(request: ApiRequest, revoke: Revoke): Promise<Response> {
  const user = await request.user();
  const response = await pass(request, '{}');
  if (user) await revoke({ user: user.id });
  return response;
}

async function pass(request: ApiRequest, body: string | undefined): Promise<Response> {
  const { method, url, cookie, reach, auth } = request;
  const path = url.pathname.slice('/api/auth'.length);
  const response = await auth.handle({ method, path, body, cookie, clientAddress: reach.clientAddress });
  return response.ok ? response : explained(response);
}

/** The same refusal, in words of ours. */
async function explained(response: Response): Promise<Response> {
  if (response.status === 429) return refusal(429, 'too-many-attempts', TOO_MANY_ATTEMPTS);
  const said: unknown = await response.json().catch(() => undefined);
  const code = said && typeof said === 'object' && 'code' in said ? String(said.code) : '';
  const sentence = AUTH_SENTENCES[code];
  if (sentence === undefined) throw new Error(`better-auth answered ${response.status} ${JSON.stringify(said)}`);
  return refusal(response.status, code, sentence);
}
