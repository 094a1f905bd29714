import { UNREACHABLE } from '#words/screens.ts';
import type { Said } from '../../kit/message.tsx';

/** Asks the account service; undefined when it did as asked, else what to tell the person. */
export function askAccounts(path: string, body: Readonly<Record<string, string>>): Promise<Said | undefined> {
  return ask(`/api/auth/${path}`, body);
}

/** Opens the demo as one of its people; undefined when it did, else what to tell the person. */
export function enterDemo(as: 'designer' | 'technician'): Promise<Said | undefined> {
  return ask('/api/demo/enter', { as });
}

async function ask(path: string, body: unknown): Promise<Said | undefined> {
  const response = await postJson(path, body);
  if (response === undefined) return UNREACHABLE;
  if (response.ok) return undefined;
  const sentence = await sentenceOf(response);
  return sentence === undefined ? UNREACHABLE : { what: sentence };
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

/** The server's own sentence; undefined when something on the way answered in its place. */
async function sentenceOf(response: Response): Promise<string | undefined> {
  const body: unknown = await response.json().catch(() => null);
  const message = typeof body === 'object' && body !== null && 'message' in body ? body.message : undefined;
  return typeof message === 'string' ? message : undefined;
}
