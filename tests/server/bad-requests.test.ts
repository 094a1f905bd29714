import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import type { Visitor } from '#tests/support/visitor.ts';
import { CAPS } from '#wire/caps.ts';

/** Sends bytes as they are and answers what came back until the server hung up. */
function sendRaw(port: number, bytes: string): Promise<string> {
  return new Promise((resolve) => {
    let heard = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    socket.on('data', (chunk) => {
      heard += chunk.toString('latin1');
    });
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(heard));
  });
}

describe('a request that is not what it should be', () => {
  let server: TestServer;
  let person: Visitor;
  beforeAll(async () => {
    server = await startTestServer('embedded');
    person = await server.person('Ada');
  });
  afterAll(() => server.stop());

  /** After whatever was sent, the server is well and has nothing to report. */
  const expectWell = async () => {
    expect((await server.visitor().request('GET', '/api/health')).status).toBe(200);
    expect(server.lines.filter((line) => line.includes(' trouble '))).toEqual([]);
  };
  const messageOf = (text: string): string => {
    const body = JSON.parse(text);
    return body.message ?? body.error.message;
  };

  it.each([
    ['/api', 404],
    ['/api/', 404],
    ['/api/nothing', 404],
    ['/api/health/', 404],
    ['/api/auth/ok', 404],
    ['/api/auth/delete-user', 404],
    ['/api/auth/list-sessions', 404],
    ['/api/auth/error', 404],
    ['/api/trpc', 404],
    ['/api/trpc/no.such', 404],
    ['/api/trpc/%', 404],
    ['/api/trpc/__proto__', 404],
    ['/api/rigs//sheets/', 404],
    ['/api/%2e%2e/health', 404],
    ['//evil.example/api/health', 404],
    ['/sync/some-rig', 426],
    ['/', 404],
  ])('GET %s answers %d in JSON', async (path, status) => {
    const answer = await person.request('GET', path);
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-type')).toMatch(/^application\/json/);
    expect(messageOf(answer.text)).toMatch(/\w.*[.!]$/);
    await expectWell();
  });

  it('says which methods an address takes', async () => {
    const answer = await person.request('DELETE', '/api/health');
    expect([answer.status, answer.headers.get('allow')]).toEqual([405, 'GET']);
    expect((await person.request('PUT', '/api/demo/enter')).status).toBe(405);
  });

  it.each([
    ['', 'the body has to be JSON'],
    ['{', 'the body has to be JSON'],
    ['\u0000\u0001', 'the body has to be JSON'],
    ['[]', ''],
    ['null', ''],
    ['{"name":{"$gt":""}}', 'name'],
    ['{"name":""}', 'A name is missing'],
    [`{"name":"${'x'.repeat(121)}"}`, 'at most 120 characters'],
    ['{"name":"a\\u0000b"}', 'invisible characters'],
    ['{"name":"\\u202Eevil"}', 'invisible characters'],
    ['{"__proto__":{"name":"x"}}', 'name'],
    ['['.repeat(50_000), 'JSON'],
  ])('the body %j makes no crew and gets a sentence', async (body, said) => {
    const answer = await person.request('POST', '/api/trpc/crews.create', { body });
    expect(answer.status).toBe(400);
    const message = messageOf(answer.text);
    expect(message.toLowerCase()).toContain(said.replace('the body', 'body').toLowerCase());
    expect(await person.granted('crews.list')).toEqual([]);
    await expectWell();
  });

  it('refuses a body past the cap with a sentence, however long it goes on', async () => {
    for (const size of [CAPS.apiBody + 1, 4 * CAPS.apiBody]) {
      const answer = await person.request('POST', '/api/trpc/crews.create', { body: 'x'.repeat(size) });
      expect(answer.status).toBe(413);
      expect(messageOf(answer.text)).toContain(String(CAPS.apiBody));
    }
    const hung = await sendRaw(
      server.running.port,
      `POST /api/trpc/crews.create HTTP/1.1\r\nHost: x\r\nOrigin: http://x\r\nContent-Length: 99999999\r\n\r\n${'y'.repeat(40 * CAPS.apiBody)}`,
    );
    expect(hung === '' || hung.startsWith('HTTP/1.1 413')).toBe(true);
    await expectWell();
  });

  it('refuses too many calls in one request', async () => {
    const calls = (count: number) => `/api/trpc/${Array(count).fill('me.get').join(',')}?batch=1`;
    expect((await person.request('GET', calls(CAPS.apiBatch))).status).toBe(200);
    expect((await person.request('GET', calls(CAPS.apiBatch + 1))).status).toBe(400);
    expect((await person.request('GET', calls(CAPS.apiBatch + 1).replaceAll(',', '%2C'))).status).toBe(400);
  });

  it.each([
    ['no HTTP at all', 'HELLO\r\n\r\n', /^HTTP\/1\.1 400/],
    ['a header line without an end', `GET / HTTP/1.1\r\nX: ${'x'.repeat(40_000)}\r\n\r\n`, /^HTTP\/1\.1 4/],
    ['no host', 'GET /api/health HTTP/1.1\r\nConnection: close\r\n\r\n', /^HTTP\/1\.1 400/],
    ['a host that is none', 'GET /api/health HTTP/1.1\r\nHost: a b\r\nConnection: close\r\n\r\n', /^HTTP\/1\.1 200/],
    [
      'another form of address',
      'GET http://x/api/health HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n',
      /^HTTP\/1\.1 404/,
    ],
    [
      'two lengths',
      'POST /api/demo/enter HTTP/1.1\r\nHost: x\r\nContent-Length: 1\r\nContent-Length: 2\r\n\r\n',
      /^HTTP\/1\.1 400/,
    ],
    [
      'a length and chunks',
      'POST /api/demo/enter HTTP/1.1\r\nHost: x\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
      /^HTTP\/1\.1 400/,
    ],
    [
      'an upgrade to nothing',
      'GET /api/health HTTP/1.1\r\nHost: x\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n',
      /^$/,
    ],
  ])('%s', async (_name, bytes, answer) => {
    expect(await sendRaw(server.running.port, bytes)).toMatch(answer);
    await expectWell();
  });

  it('survives a hundred connections cut off in the middle of a body', async () => {
    const cut = () =>
      new Promise<void>((resolve) => {
        const socket = connect(server.running.port, '127.0.0.1', () => {
          const head = `POST /api/trpc/crews.create HTTP/1.1\r\nHost: x\r\nOrigin: http://x\r\nContent-Length: 100\r\n\r\n{"na`;
          socket.write(head, () => socket.destroy());
        });
        socket.on('error', () => undefined);
        socket.on('close', () => resolve());
      });
    await Promise.all(Array.from({ length: 100 }, cut));
    await expectWell();
  });

  it('sends every answer with the headers that keep a browser from guessing and framing', async () => {
    for (const path of ['/api/health', '/api/nothing', '/']) {
      const { headers } = await person.request('GET', path);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
      expect(headers.get('referrer-policy')).toBe('same-origin');
    }
  });
});
