import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { systemClock } from '#base/clock.ts';
import { randomId } from '#base/random-id.ts';
import { type Config, readConfig } from './config/read-config.ts';
import { StartRefused } from './config/start-refused.ts';
import { findRoot } from './find-root.ts';
import { createLog } from './log.ts';
import { type RunningServer, startServer } from './start-server.ts';

// The process: its arguments, its environment, its signals. `--dev` serves the pages from their sources, `--no-pages` none at all.
const STOP_MS = 15_000;
const root = findRoot(import.meta.dirname);
const log = createLog((line) => console.log(line), systemClock.now);

process.env.NEXT_TELEMETRY_DISABLED = '1';
process.on('unhandledRejection', (reason) => log.trouble('a promise nobody waited for', asError(reason)));
await run();

async function run(): Promise<void> {
  try {
    const config = readConfig(process.env, process.cwd());
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const running = await startServer({
      config,
      root,
      version: String(version),
      pages: process.argv.includes('--no-pages') ? 'none' : process.argv.includes('--dev') ? 'sources' : 'build',
      clock: systemClock,
      makeId: randomId,
      log,
    });
    announce(config, running);
    stopOnSignal(running);
  } catch (error) {
    if (error instanceof StartRefused) console.error(error.message);
    else console.error(error);
    process.exit(1);
  }
}

function announce(config: Config, { port, store }: RunningServer): void {
  log.note('ready', { store: store.kind, host: config.host, port, demo: config.demo ? 1 : 0 });
  const here = config.host === '0.0.0.0' || config.host === '::' ? 'localhost' : config.host;
  console.log(`\nRigledger is ready: ${config.publicUrl?.origin ?? `http://${here}:${port}`}\n`);
}

function stopOnSignal(running: RunningServer): void {
  const stop = (signal: NodeJS.Signals) => {
    log.note('stopping', { signal });
    setTimeout(() => process.exit(1), STOP_MS).unref();
    running.stop().then(
      () => {
        log.note('stopped');
        process.exit(0);
      },
      (error: unknown) => {
        log.trouble('stopping', asError(error));
        process.exit(1);
      },
    );
  };
  process.once('SIGTERM', stop);
  process.once('SIGINT', stop);
}

function asError(reason: unknown): Error {
  return reason instanceof Error ? reason : new Error(String(reason));
}
