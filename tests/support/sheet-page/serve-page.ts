import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, normalize } from 'node:path';
import { build } from 'esbuild';
import { buildStyleSheet } from './style-sheet.ts';

const root = new URL('../../..', import.meta.url).pathname;

/** A page on the loopback interface, and how to take it down. */
export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

/** Bundles `entry` (a path from the root of the repository) for a browser and serves it with the style sheet of the program. */
export async function servePage(entry: string, port = 0): Promise<ServedPage> {
  const [script, style] = await Promise.all([bundle(entry), buildStyleSheet()]);
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Sheet</title><meta name="viewport" content="width=device-width, initial-scale=1"><link rel="icon" href="data:,"><link rel="stylesheet" href="/style.css"></head><body><div id="root"></div><script src="/page.js"></script></body></html>`;
  const answers: Readonly<Record<string, readonly [type: string, body: string]>> = {
    '/': ['text/html; charset=utf-8', html],
    '/page.js': ['text/javascript; charset=utf-8', script],
    '/style.css': ['text/css; charset=utf-8', style],
  };
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const answer = answers[path];
    if (answer) response.setHeader('content-type', answer[0]).end(answer[1]);
    else if (/^\/node_modules\/@fontsource[\w-]*\/[\w./-]+\.woff2?$/.test(path) && normalize(path) === path) {
      response.setHeader('content-type', 'font/woff2').end(readFileSync(join(root, path)));
    } else response.writeHead(404).end();
  });
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error(`no port: ${String(address)}`);
  return {
    url: `http://127.0.0.1:${address.port}/`,
    async close() {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}

async function bundle(entry: string): Promise<string> {
  const built = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    jsx: 'automatic',
    minify: true,
    define: { 'process.env.NODE_ENV': '"production"', 'process.env': '{}', global: 'globalThis' },
    logLevel: 'error',
  });
  const [script] = built.outputFiles;
  if (script === undefined) throw new Error(`${entry} made no script`);
  return script.text;
}
