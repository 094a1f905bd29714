import { type ChildProcess, spawn } from 'node:child_process';
import { basename, join } from 'node:path';
import { createInterface } from 'node:readline';
import { build } from 'esbuild';

/** A process of its own that serves on a port. */
export interface PortProcess {
  readonly port: number;
  readonly ended: Promise<void>;
  kill(): Promise<void>;
  /** Its memory in use, in bytes. */
  memory(): Promise<number>;
}

const cache = join(import.meta.dirname, '../../node_modules/.cache/rigledger');
const RECORD_WORKER = join(import.meta.dirname, '../../src/server/record/record-worker.ts');

/**
 * Starts a TypeScript file as a process of its own, bundled so that it starts quickly. It gets `orders` as JSON in ORDERS, and
 * says `{"port":…}` on its first line once it serves.
 */
export async function startPortProcess(entry: string, orders: unknown): Promise<PortProcess> {
  const { child, ended, firstLine } = await start(entry, orders);
  return {
    port: Number(JSON.parse(await firstLine).port),
    ended,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    memory: () => askMemory(child),
  };
}

/** Runs such a file to its end; what it said on its first line, read as JSON. */
export async function runProcess(entry: string, orders: unknown): Promise<unknown> {
  const { firstLine, ended } = await start(entry, orders);
  const line = await firstLine;
  await ended;
  return JSON.parse(line);
}

interface Started {
  readonly child: ChildProcess;
  readonly ended: Promise<void>;
  readonly firstLine: Promise<string>;
}

async function start(entry: string, orders: unknown): Promise<Started> {
  const name = basename(entry, '.ts');
  const folder = join(cache, `${name}-${process.pid}`);
  await build({
    // A server starts its threads from bundles beside its own.
    entryPoints: { [name]: entry, 'record-worker': RECORD_WORKER },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
  });
  const child = spawn(process.execPath, ['--expose-gc', join(folder, `${name}.mjs`)], {
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
    env: { ...process.env, ORDERS: JSON.stringify(orders) },
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const endWithUs = () => void child.kill('SIGKILL');
  process.once('exit', endWithUs);
  void ended.then(() => process.off('exit', endWithUs));
  return { child, ended, firstLine: firstLineOf(child, ended) };
}

async function firstLineOf(child: ChildProcess, ended: Promise<void>): Promise<string> {
  if (!child.stdout) throw new Error('the process has no output');
  const lines = createInterface(child.stdout);
  const line = await Promise.race([new Promise<string>((resolve) => lines.once('line', resolve)), ended]);
  if (line === undefined) throw new Error('the process ended without a word');
  return line;
}

function askMemory(child: ChildProcess): Promise<number> {
  return new Promise((resolve) => {
    child.once('message', (bytes) => resolve(Number(bytes)));
    child.send('memory');
  });
}
