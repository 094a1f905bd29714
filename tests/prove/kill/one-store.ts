import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import { build } from 'esbuild';
import { seededRng } from '#base/rng.ts';
import { openStore, type StoreConfig } from '#server/db/open-store.ts';
import { newRigIn } from '#tests/support/new-rig.ts';
import { startPostgres } from '#tests/support/postgres.ts';
import { type StoreKind, seedDataFolder, temporaryFolder } from '#tests/support/store.ts';
import { openEditors } from './editors.ts';

const root = join(import.meta.dirname, '../../..');
const POINTS = [
  'appending',
  'appended',
  'applied',
  'acknowledged',
  'checkpointing',
  'checkpointed',
  'trimming',
  'trimmed',
  'committing',
  'committed',
] as const;
/** Reached with every batch; the others with every checkpoint. */
const OFTEN: ReadonlySet<string> = new Set(['appending', 'appended', 'applied', 'acknowledged']);
const EDITORS = 5;
/** A point that is not reached by then: killed all the same, from outside, wherever it is. */
const PATIENCE_MS = 2_500;

export interface KillOutcome {
  readonly faults: readonly string[];
  readonly acknowledged: number;
  readonly points: ReadonlyMap<string, number>;
}

export interface KillRun {
  readonly rounds: number;
  readonly seed: number;
  /** `hasty` acknowledges before it stores: it has to be found out. */
  readonly server: 'honest' | 'hasty';
}

/** Kills a server process again and again on one store and counts the acknowledged edits that are not there afterwards. */
export async function killOn(kind: StoreKind, { rounds, seed, server: manner }: KillRun): Promise<KillOutcome> {
  const place = kind === 'embedded' ? await onFolder() : await onPostgres();
  const script = await bundle();
  const rng = seededRng(seed);
  const acknowledged = new Set<string>();
  const points = new Map<string, number>();
  const faults: string[] = [];
  const lookFor = (there: ReadonlySet<string>, round: number): void => {
    const lost = [...acknowledged].filter((id) => !there.has(id));
    const where = `${kind}, seed ${seed}, before round ${round}`;
    if (lost.length > 0) faults.push(`${where}: ${lost.length} acknowledged edits lost, first ${lost[0]}`);
    for (const id of lost) acknowledged.delete(id);
  };
  try {
    const rig = await makeRig(place.store);
    for (let round = 0; round < rounds; round++) {
      const point = rng.int(4) === 0 ? 'at any moment' : rng.pick(POINTS);
      points.set(point, (points.get(point) ?? 0) + 1);
      const orders = { point, nth: 1 + rng.int(OFTEN.has(point) ? 80 : 5), manner };
      const server = await startServer(script, place.store, orders);
      const editors = openEditors(server.port, rig, { count: EDITORS, name: `r${round}`, rng });
      lookFor(await editors.filled, round);
      await editUntilKilled(server, editors, point === 'at any moment' ? 50 + rng.int(800) : PATIENCE_MS);
      for (const id of editors.acknowledged()) acknowledged.add(id);
      await editors.close();
    }
    const server = await startServer(script, place.store, { point: 'none', nth: 0, manner });
    const reader = openEditors(server.port, rig, { count: 1, name: 'reader', rng });
    lookFor(await reader.filled, rounds);
    await reader.close();
    await server.kill();
  } finally {
    await place.remove();
  }
  return { faults, acknowledged: acknowledged.size, points };
}

async function editUntilKilled(
  server: Server,
  editors: ReturnType<typeof openEditors>,
  patienceMs: number,
): Promise<void> {
  editors.start();
  await Promise.race([server.ended, pause(patienceMs)]);
  await server.kill();
  // What the process had sent before it died is still to be heard.
  await pause(50);
}

interface Server {
  readonly port: number;
  readonly ended: Promise<void>;
  kill(): Promise<void>;
}

async function startServer(
  script: string,
  store: StoreConfig,
  orders: { readonly point: string; readonly nth: number; readonly manner: KillRun['server'] },
): Promise<Server> {
  const child = spawn(process.execPath, [script], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, KILL_ORDERS: JSON.stringify({ store, root, ...orders }) },
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const port = await portOf(child, ended);
  return {
    port,
    ended,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

async function portOf(child: ChildProcess, ended: Promise<void>): Promise<number> {
  if (!child.stdout) throw new Error('the server process has no output');
  const lines = createInterface(child.stdout);
  const first = new Promise<string>((resolve) => lines.once('line', resolve));
  const line = await Promise.race([first, ended]);
  if (line === undefined) throw new Error('the server process ended before it was ready');
  return Number(JSON.parse(line).port);
}

async function bundle(): Promise<string> {
  const outfile = join(root, 'node_modules/.cache/rigledger/kill-server.mjs');
  const entry = join(import.meta.dirname, 'server-process.ts');
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
  });
  return outfile;
}

async function makeRig(config: StoreConfig): Promise<string> {
  const store = await openStore(config, { root, onLost: () => undefined });
  const rig = await newRigIn(store.sql);
  await store.close();
  return rig;
}

async function onFolder(): Promise<{ readonly store: StoreConfig; remove(): Promise<void> }> {
  const { folder, remove } = temporaryFolder();
  await seedDataFolder(folder);
  return { store: { kind: 'embedded', folder }, remove: async () => remove() };
}

async function onPostgres(): Promise<{ readonly store: StoreConfig; remove(): Promise<void> }> {
  const postgres = await startPostgres();
  return { store: { kind: 'postgres', url: await postgres.createDatabase() }, remove: () => postgres.stop() };
}
