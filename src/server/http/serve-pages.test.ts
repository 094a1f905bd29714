import { createHash } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { inlineScriptHashes, type ServePages, serveWithPolicy } from './serve-pages.ts';

const hash = (text: string) => createHash('sha256').update(text).digest('base64');

let server: Server | undefined;
afterEach(() => server?.close());

async function ask(pages: ServePages, accept = 'text/html', method = 'GET'): Promise<Response> {
  const serve = serveWithPolicy(pages, () => 'rigs.local:3000');
  server = createServer((request, response) => void serve(request, response));
  await new Promise<void>((resolve) => server?.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return fetch(`http://127.0.0.1:${port}/`, { method, headers: { accept } });
}

describe('inlineScriptHashes', () => {
  it('finds inline scripts, whatever their attributes, and no others', () => {
    const html = `<p>x</p><script>a()</script><script async src="/b.js"></script><script id="c" nonce="">c()\n</script><script>a()</script>`;
    expect(inlineScriptHashes(html)).toEqual([hash('a()'), hash('c()\n')]);
  });
});

describe('serveWithPolicy', () => {
  it('names the inline scripts of a page that comes in pieces, and nothing else may run', async () => {
    const answer = await ask(async (_request, response) => {
      response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' });
      response.write('<html><script>one(');
      response.write(Buffer.from(')</script>'));
      response.end('<script>zwei("ü")</script></html>');
    });
    const policy = answer.headers.get('content-security-policy') ?? '';
    expect(policy).toContain(`script-src 'self' 'sha256-${hash('one()')}' 'sha256-${hash('zwei("ü")')}';`);
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline/);
    expect(policy).toContain('ws://rigs.local:3000');
    expect(await answer.text()).toBe('<html><script>one()</script><script>zwei("ü")</script></html>');
  });

  it('keeps the status and the headers of a page', async () => {
    const answer = await ask(async (_request, response) => {
      response.statusCode = 404;
      response.setHeader('content-type', 'text/html');
      response.setHeader('x-kept', 'yes');
      response.end('<p>no</p>');
    });
    expect([answer.status, answer.headers.get('x-kept'), await answer.text()]).toEqual([404, 'yes', '<p>no</p>']);
  });

  it('lets everything that is no page through as it comes', async () => {
    const json = await ask(async (_request, response) => {
      response.writeHead(201, { 'content-type': 'application/json' });
      response.write('{');
      response.end('}');
    });
    expect([json.status, await json.text()]).toEqual([201, '{}']);
    expect(json.headers.get('content-security-policy')).toBeNull();
    const script = await ask(async (_request, response) => {
      response.writeHead(200, { 'content-type': 'text/javascript' });
      response.end('x()');
    }, '*/*');
    expect(await script.text()).toBe('x()');
  });
});
