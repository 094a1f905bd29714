import { ACCOUNT_BROKEN, ACCOUNT_REFUSALS } from '#words/account.ts';
import { UNREACHABLE } from '#words/screens.ts';
import type { Said } from '../../kit/message.tsx';

/** Asks the account service; undefined when it did as asked, else what to tell the person. */
export async function askAccounts(path: string, body: Readonly<Record<string, string>>): Promise<Said | undefined> {
  const response = await postJson(`/api/auth/${path}`, body);
  if (response === undefined) return UNREACHABLE;
  if (response.ok) return undefined;
  if (response.status === 429) return ACCOUNT_REFUSALS.TOO_MANY_REQUESTS;
  if (response.status >= 500) return ACCOUNT_BROKEN;
  return ACCOUNT_REFUSALS[await codeOf(response)] ?? ACCOUNT_BROKEN;
}

/** Opens the demo as one of its people; undefined when it did, else what to tell the person. */
export async function enterDemo(as: 'designer' | 'technician'): Promise<Said | undefined> {
  const response = await postJson('/api/demo/enter', { as });
  if (response === undefined) return UNREACHABLE;
  return response.ok ? undefined : ACCOUNT_BROKEN;
}

/** The answer, or undefined when there is none. */
async function postJson(path: string, body: unknown): Promise<Response | undefined> {
  try {
    return await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  } catch (error) {
    if (error instanceof TypeError) return undefined; // how fetch says that the network failed
    throw error;
  }
}

async function codeOf(response: Response): Promise<string> {
  const body: unknown = await response.json().catch(() => null);
  return typeof body === 'object' && body !== null && 'code' in body && typeof body.code === 'string' ? body.code : '';
}
