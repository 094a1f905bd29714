import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { type Auth, createAuth } from '#server/auth/create-auth.ts';
import { readSecret } from '#server/auth/read-secret.ts';
import type { Store } from '#server/db/store.ts';
import { STORE_KINDS, type TestStores, testStores } from '#tests/support/store.ts';

const ada = { name: 'Ada', email: 'ada@crew.example', password: 'quiet-lamp-17' };

describe.each(STORE_KINDS)('accounts on the %s store', (kind) => {
  let stores: TestStores;
  let store: Store;
  let auth: Auth;
  let secret: string;
  beforeAll(async () => {
    stores = await testStores(kind);
    store = await stores.open();
    secret = await readSecret(store);
    auth = createAuth({ store, secret, scheme: 'http', attemptsPerMinute: 5 });
  });
  afterAll(() => stores.close());

  const post = (path: string, body: object, { cookie, from = '10.0.0.1' }: { cookie?: string; from?: string } = {}) =>
    auth.handle({ method: 'POST', path, body: JSON.stringify(body), cookie, clientAddress: from });
  const cookieOf = (response: Response) => present(response.headers.getSetCookie()[0], 'no cookie was set');
  const pairOf = (line: string) => present(line.split(';')[0], 'an empty cookie');

  it('keeps one secret, however many ask for it at once', async () => {
    const asked = await Promise.all(Array.from({ length: 5 }, () => readSecret(store)));
    expect(new Set(asked)).toEqual(new Set([secret]));
    expect(secret.length).toBeGreaterThanOrEqual(43);
  });

  it('signs up, in and out; the cookie is HttpOnly and SameSite=Lax, and worth nothing afterwards', async () => {
    const signedUp = await post('/sign-up/email', ada);
    expect(signedUp.status).toBe(200);
    const line = cookieOf(signedUp);
    expect(line).toMatch(/^rigledger\.session_token=/);
    expect(line).toMatch(/; HttpOnly/i);
    expect(line).toMatch(/; SameSite=Lax/i);
    expect(line).not.toMatch(/; Secure/i);
    const me = await auth.userOf(pairOf(line));
    expect(me).toEqual({ id: me?.id, name: 'Ada', email: 'ada@crew.example' });

    const signedIn = await post('/sign-in/email', { email: ada.email, password: ada.password });
    const cookie = pairOf(cookieOf(signedIn));
    expect(await auth.userOf(cookie)).toEqual(me);
    await post('/sign-out', {}, { cookie });
    expect(await auth.userOf(cookie)).toBeNull();
    expect(await auth.userOf(pairOf(line))).toEqual(me);
  });

  it('keeps no password that can be read, and says the same for a wrong password as for an unknown address', async () => {
    const account = await store.prisma.account.findFirstOrThrow({ where: { user: { email: ada.email } } });
    expect(account.password).not.toContain(ada.password);
    const wrong = await post('/sign-in/email', { email: ada.email, password: 'wrong-lamp-17' }, { from: '10.0.0.2' });
    const unknown = await post(
      '/sign-in/email',
      { email: 'x@crew.example', password: 'y'.repeat(12) },
      { from: '10.0.0.2' },
    );
    expect([wrong.status, unknown.status]).toEqual([401, 401]);
    expect(await wrong.text()).toBe(await unknown.text());
  });

  it('takes an e-mail address once, also when two ask at once', async () => {
    const twice = { name: 'Bo', email: 'bo@crew.example', password: 'quiet-lamp-18' };
    const answers = await Promise.all([1, 2].map((n) => post('/sign-up/email', twice, { from: `10.0.1.${n}` })));
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 422]);
    expect(await store.prisma.user.count({ where: { email: twice.email } })).toBe(1);
    expect(await store.prisma.account.count({ where: { user: { email: twice.email } } })).toBe(1);
  });

  it('stops guessing from one address without locking out another', async () => {
    const guess = (from: string) => post('/sign-in/email', { email: ada.email, password: 'guess-guess' }, { from });
    const statuses: number[] = [];
    for (let n = 0; n < 7; n++) statuses.push((await guess(kind === 'embedded' ? '10.9.9.9' : '10.9.8.9')).status);
    expect(statuses).toEqual([401, 401, 401, 401, 401, 429, 429]);
    expect((await guess(kind === 'embedded' ? '10.9.9.8' : '10.9.8.8')).status).toBe(401);
  });

  it('sees through a cookie whose token, signature or scheme is not its own', async () => {
    const user = await store.prisma.user.findFirstOrThrow({ where: { email: ada.email } });
    const cookie = pairOf(await auth.beginSession(user.id));
    expect((await auth.userOf(cookie))?.id).toBe(user.id);
    expect(await auth.userOf(cookie.replace(/=(.)/, (_, first) => (first === 'x' ? '=y' : '=x')))).toBeNull();
    expect(await auth.userOf(cookie.slice(0, -6))).toBeNull();
    expect(await auth.userOf(`__Host-${cookie}`)).toBeNull();
    const other = createAuth({
      store,
      secret: 'another secret of no less than 32 characters',
      scheme: 'http',
      attemptsPerMinute: 5,
    });
    expect(await other.userOf(cookie)).toBeNull();
  });

  it('binds the cookie to the host and to HTTPS where there is HTTPS', async () => {
    const secure = createAuth({ store, secret, scheme: 'https', attemptsPerMinute: 5 });
    const user = await store.prisma.user.findFirstOrThrow({ where: { email: ada.email } });
    const begun = await secure.beginSession(user.id);
    const body = JSON.stringify({ email: ada.email, password: ada.password });
    const signedIn = cookieOf(
      await secure.handle({
        method: 'POST',
        path: '/sign-in/email',
        body,
        cookie: undefined,
        clientAddress: '10.3.3.3',
      }),
    );
    for (const line of [begun, signedIn]) {
      expect(line).toMatch(/^__Host-rigledger\.session_token=/);
      expect(line).toMatch(/; Secure/i);
      expect(line).toMatch(/; Path=\/(;|$)/i);
      expect(line).not.toMatch(/Domain=/i);
      expect((await secure.userOf(pairOf(line)))?.id).toBe(user.id);
    }
  });

  it('ends a session when its time is over', async () => {
    const user = await store.prisma.user.findFirstOrThrow({ where: { email: ada.email } });
    const cookie = pairOf(await auth.beginSession(user.id));
    await store.prisma.session.updateMany({
      where: { userId: user.id },
      data: { expiresAt: new Date(Date.now() - 1000) },
    });
    expect(await auth.userOf(cookie)).toBeNull();
  });
});
