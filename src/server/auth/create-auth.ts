import { createHmac } from 'node:crypto';
import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { randomId } from '#base/random-id.ts';
import { CAPS } from '#wire/caps.ts';
import type { Me } from '#wire/me.ts';
import type { Store } from '../db/store.ts';

/** How a request reached us: `https` cookies are bound to the host and never sent in the clear; `http` ones have to do without. */
export type Scheme = 'http' | 'https';

/** Accounts and sessions as requests of one scheme see them. */
export interface Auth {
  /** Serves an account request that came with this cookie, from this address. */
  handle(request: AuthRequest): Promise<Response>;
  /** Who a cookie header belongs to; null for nobody, an ended session, or a cookie that was tampered with. */
  userOf(cookie: string | undefined): Promise<Me['user']>;
  /** Begins a session without a password; answers the Set-Cookie line. Only the demo's own door may use it. */
  beginSession(userId: string): Promise<string>;
}

interface AuthRequest {
  readonly method: 'GET' | 'POST';
  /** Below `/api/auth`, such as `/sign-in/email`. */
  readonly path: string;
  readonly body: string | undefined;
  readonly cookie: string | undefined;
  readonly clientAddress: string;
}

export interface AuthOptions {
  readonly store: Store;
  readonly secret: string;
  readonly scheme: Scheme;
  /** Sign-ins and sign-ups that one address may try in a minute. */
  readonly attemptsPerMinute: number;
}

const BASE_PATH = '/api/auth';
const CLIENT_ADDRESS = 'x-rigledger-client-address';
const SESSION_SECONDS = 30 * 24 * 60 * 60;

/**
 * better-auth over our store. It is spoken to under an address of its own, whatever name the server was reached by: whether a
 * request is of the same origin is decided before, in one place for all of them.
 */
export function createAuth(options: AuthOptions): Auth {
  const origin = `${options.scheme}://rigledger.internal`;
  const library = configure(options, origin);
  return {
    handle: ({ method, path, body, cookie, clientAddress }) => {
      const headers = new Headers({ origin, [CLIENT_ADDRESS]: clientAddress });
      if (cookie !== undefined) headers.set('cookie', cookie);
      if (body !== undefined) headers.set('content-type', 'application/json');
      const url = `${origin}${BASE_PATH}${path}`;
      return library.handler(new Request(url, { method, headers, ...(body === undefined ? {} : { body }) }));
    },
    userOf: async (cookie) => {
      if (cookie === undefined) return null;
      const found = await library.api.getSession({ headers: new Headers({ cookie }) });
      return found ? { id: found.user.id, name: found.user.name, email: found.user.email } : null;
    },
    beginSession: async (userId) => {
      const { internalAdapter, authCookies, secret } = await library.$context;
      const { token } = await internalAdapter.createSession(userId);
      return cookieLine(authCookies.sessionToken.name, { token, secret, scheme: options.scheme });
    },
  };
}

function configure({ store, secret, scheme, attemptsPerMinute }: AuthOptions, origin: string) {
  const attempts = { window: 60, max: attemptsPerMinute };
  return betterAuth({
    appName: 'Rigledger',
    baseURL: origin,
    basePath: BASE_PATH,
    secret,
    // In a transaction a sign-up would hash its password inside it, and on the embedded store everybody's edits would wait for that.
    database: prismaAdapter(store.prisma, { provider: 'postgresql', transaction: false }),
    emailAndPassword: {
      enabled: true,
      minPasswordLength: CAPS.leastPasswordLength,
      maxPasswordLength: CAPS.passwordLength,
    },
    // No cookie cache: a session that has ended is ended at once.
    session: { expiresIn: SESSION_SECONDS, disableSessionRefresh: true },
    rateLimit: {
      enabled: true,
      window: 60,
      max: 600,
      customRules: { '/sign-in/email': attempts, '/sign-up/email': attempts },
    },
    advanced: {
      database: { generateId: () => randomId() },
      ipAddress: { ipAddressHeaders: [CLIENT_ADDRESS] },
      useSecureCookies: false,
      cookiePrefix: cookiePrefix(scheme),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/', secure: scheme === 'https' },
    },
    telemetry: { enabled: false },
    logger: { disabled: true },
  });
}

// A browser takes a `__Host-` cookie only over HTTPS, for this very host, and for every path of it.
function cookiePrefix(scheme: Scheme): string {
  return scheme === 'https' ? '__Host-rigledger' : 'rigledger';
}

interface SignedToken {
  readonly token: string;
  readonly secret: string;
  readonly scheme: Scheme;
}

/** The line that better-auth would set: the token and its HMAC-SHA-256. */
function cookieLine(name: string, { token, secret, scheme }: SignedToken): string {
  const signature = createHmac('sha256', secret).update(token).digest('base64');
  const value = encodeURIComponent(`${token}.${signature}`);
  const secure = scheme === 'https' ? '; Secure' : '';
  return `${name}=${value}; Max-Age=${SESSION_SECONDS}; Path=/; HttpOnly; SameSite=Lax${secure}`;
}
