import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

export interface SpawnedServer {
  readonly child: ChildProcess;
  /** Everything said so far, on either stream. */
  readonly lines: readonly string[];
  /** The address once it is ready; undefined when it ended before. */
  readonly address: Promise<string | undefined>;
  /** The exit code; null after a signal. */
  readonly exit: Promise<number | null>;
  /** Ends it at once, if it still runs. */
  kill(): void;
}

const root = join(import.meta.dirname, '../..');

/** Starts the server as a process of its own, from its sources, without pages; `env` are its settings. */
export function spawnServer(env: Readonly<Record<string, string>>): SpawnedServer {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/server/main.ts', '--no-pages'], {
    cwd: root,
    env: {
      NODE_ENV: 'production',
      PATH: process.env.PATH,
      HOME: process.env.HOME,
      HOST: '127.0.0.1',
      PORT: '0',
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines: string[] = [];
  const exit = new Promise<number | null>((resolve) => child.once('close', resolve));
  const ready = new Promise<string>((resolve) => {
    const listen = (line: string) => {
      lines.push(line);
      const port = / note ready .* port=(\d+)/.exec(line)?.[1];
      if (port) resolve(`http://127.0.0.1:${port}`);
    };
    createInterface({ input: child.stdout }).on('line', listen);
    createInterface({ input: child.stderr }).on('line', listen);
  });
  const address = Promise.race([ready, exit.then(() => undefined)]);
  return { child, lines, address, exit, kill: () => void child.kill('SIGKILL') };
}
