import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PORT = 4310;

/** Starts the built server on an empty embedded store with the demo in it; the answer ends it again. */
export default async function startServer(): Promise<() => Promise<void>> {
  const folder = mkdtempSync(join(tmpdir(), 'rigledger-browser-'));
  const server = spawn(process.execPath, ['--enable-source-maps', 'dist/server.mjs'], {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: {
      ...process.env,
      NODE_ENV: 'production',
      PORT: String(PORT),
      HOST: '127.0.0.1',
      DATA_DIR: folder,
      DATABASE_URL: '',
      DEMO: '1',
      // Every journey signs in, all from one address.
      SIGN_IN_ATTEMPTS: '100000',
    },
  });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  await answering(`http://localhost:${PORT}/api/health`, () => server.exitCode !== null);
  return async () => {
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
}

async function answering(address: string, gone: () => boolean): Promise<void> {
  for (let attempt = 0; attempt < 600; attempt++) {
    if (gone()) throw new Error('the server ended before it answered');
    const answer = await fetch(address).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`no answer at ${address} within a minute`);
}
