import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HELLO, probeSync } from '#tests/support/sync-probe.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';

const account = { name: 'Ada', email: 'ada@crew.example', password: 'quiet-lamp-17' };
const proxied = (host: string) => ({
  origin: `https://${host}`,
  'x-forwarded-host': host,
  'x-forwarded-proto': 'https',
  'x-forwarded-for': '203.0.113.7',
});

describe('behind a proxy of ours that ends TLS', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await startTestServer('embedded', { trustProxy: true, publicUrl: new URL('https://rigs.example') });
  });
  afterAll(() => server.stop());

  const signUp = (visitor: Visitor, headers: Readonly<Record<string, string>>, email = account.email) =>
    visitor.request('POST', '/api/auth/sign-up/email', { body: { ...account, email }, headers });

  it('sets a cookie that is bound to the host and never sent in the clear, and says that the page is secure', async () => {
    const visitor = server.visitor();
    const answer = await signUp(visitor, proxied('rigs.example'));
    expect(answer.status).toBe(200);
    expect(answer.headers.getSetCookie()[0]).toMatch(/^__Host-rigledger\.session_token=.*; Secure/);
    const me = await visitor.request('GET', '/api/trpc/me.get', { headers: proxied('rigs.example') });
    expect(JSON.parse(me.text).result.data).toMatchObject({ secure: true, user: { email: account.email } });
    // The same cookie is worth nothing over plain HTTP.
    const plain = await visitor.request('GET', '/api/trpc/me.get');
    expect(JSON.parse(plain.text).result.data).toMatchObject({ secure: false, user: null });
  });

  it('still serves the venue\u2019s own network over plain HTTP, under any name', async () => {
    const visitor = server.visitor();
    const answer = await signUp(visitor, {}, 'bo@crew.example');
    expect(answer.headers.getSetCookie()[0]).toMatch(/^rigledger\.session_token=(?!.*; Secure)/);
  });

  it('takes no page of plain HTTP for its own where there is HTTPS', async () => {
    const headers = { ...proxied('rigs.example'), origin: 'http://rigs.example' };
    expect((await signUp(server.visitor(), headers, 'cy@crew.example')).status).toBe(403);
  });

  it('opens sockets for pages of its public address', async () => {
    const visitor = server.visitor();
    await signUp(visitor, proxied('rigs.example'), 'dy@crew.example');
    const headers = { ...proxied('rigs.example'), cookie: visitor.cookie };
    const made = await visitor.request('POST', '/api/trpc/crews.create', { body: { name: 'Crew' }, headers });
    const crewId = JSON.parse(made.text).result.data.id;
    const body = { crewId, name: 'Rig', kind: 'show' };
    const rig = await visitor.request('POST', '/api/trpc/rigs.create', { body, headers });
    const probe = probeSync(visitor.socket(JSON.parse(rig.text).result.data.id, headers));
    probe.send(HELLO);
    expect((await probe.hear('welcome'))?.role).toBe('writer');
    probe.close();
  });
});

describe('without a proxy', () => {
  it('counts attempts by the address of the connection, whatever a header says', async () => {
    const server = await startTestServer('embedded', { attemptsPerMinute: 3 });
    const statuses: number[] = [];
    for (let n = 0; n < 5; n++) {
      const body = { email: 'nobody@crew.example', password: 'guess-guess' };
      const headers = { 'x-forwarded-for': `203.0.113.${n}`, 'x-rigledger-client-address': `203.0.113.${n}` };
      statuses.push((await server.visitor().request('POST', '/api/auth/sign-in/email', { body, headers })).status);
    }
    await server.stop();
    expect(statuses).toEqual([401, 401, 401, 429, 429]);
  });
});
