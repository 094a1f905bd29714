import { join } from 'node:path';
import { percentile, runCrowd } from '#tests/bench/crowd/run-crowd.ts';
import { runProcess, startPortProcess } from '#tests/support/port-process.ts';
import type { StoreKind } from '#tests/support/store.ts';
import { makeStorePlace } from '#tests/support/store-place.ts';
import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import type { AwayOrders } from './offline/away-process.ts';

export const name = 'offline';
export const bar = '50 people with 200 edits each come back within 5 s: 0 lost, others p95 ≤ 1.5 ×';
export const rounds = { usual: 1, smoke: 1 };

const SERVER = join(import.meta.dirname, '../bench/crowd/server-process.ts');
const AWAY = join(import.meta.dirname, 'offline/away-process.ts');

/** Each round: people edit without a network, and all come back while others work on. */
export async function run({ rounds: times, seed, stores, smoke }: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  const also: Record<string, string> = {};
  for (const kind of smoke ? stores.slice(0, 1) : stores)
    for (let round = 0; round < times; round++) {
      const { lost, calm, busy } = await comeBack(kind, seed + round, smoke ? SMALL : WHOLE);
      const p95 = `others p95 ${busy.toFixed(1)} ms, in calm ${calm.toFixed(1)} ms`;
      if (lost !== 0) faults.push(`${kind}: ${lost} edits lost`);
      // A smoke run shares the machine with everything else: its times mean nothing.
      if (!smoke && busy > 1.5 * calm) faults.push(`${kind}: ${p95}`);
      also[kind] = p95;
    }
  return { rounds: times, faults, also };
}

const WHOLE = { people: 50, edits: 200, withinMs: 5_000 };
const SMALL = { people: 8, edits: 20, withinMs: 500 };

interface Return {
  readonly lost: number;
  /** The 95th percentile of when those who were there all along see each other's edits, before and meanwhile. */
  readonly calm: number;
  readonly busy: number;
}

async function comeBack(kind: StoreKind, seed: number, away: typeof WHOLE): Promise<Return> {
  const { store, root, rig, remove } = await makeStorePlace(kind);
  const server = await startPortProcess(SERVER, { manner: 'sync', store, root });
  try {
    const crowd = { people: 10, writers: 10, editsPerSecond: 50, seconds: 2 + away.withinMs / 1000 };
    const calm = percentile((await runCrowd(server.port, rig, crowd, 'sync')).seen, 0.95);
    const orders: AwayOrders = { ...away, port: server.port, rig, seed };
    const returning = runProcess(AWAY, orders) as Promise<{ readonly lost: number }>;
    const busy = percentile((await runCrowd(server.port, rig, crowd, 'sync')).seen, 0.95);
    return { ...(await returning), calm, busy };
  } finally {
    await server.kill();
    await remove();
  }
}
