import { join } from 'node:path';
import { percentile, runCrowd } from '#tests/bench/crowd/run-crowd.ts';
import { type PortProcess, runProcess, startPortProcess } from '#tests/support/port-process.ts';
import { makeStorePlace } from '#tests/support/store-place.ts';
import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import type { AttackOrders } from './hostile/attacker-process.ts';
import { ATTACKS, type AttackName } from './hostile/attacks.ts';
import { fillSlowReader } from './hostile/slow-reader.ts';

export const name = 'hostile';
export const bar = 'cut off within 1 s; others p99 ≤ 2 ×; memory + ≤ 100 MB';
export const rounds = { usual: 3, smoke: 1 };

const SERVER = join(import.meta.dirname, '../bench/crowd/server-process.ts');
const ATTACKER = join(import.meta.dirname, 'hostile/attacker-process.ts');
const NAMES = Object.keys(ATTACKS) as AttackName[];
const MIB = 2 ** 20;

/** Each round carries out every attack on a server with people on it, and looks how they fare meanwhile. */
export async function run({ rounds: times, smoke }: ProofRun): Promise<ProofOutcome> {
  const { store, root, rig, remove } = await makeStorePlace('embedded');
  const server = await startPortProcess(SERVER, { manner: 'sync', store, root });
  const faults: string[] = [];
  try {
    const crowd = { people: 10, writers: 10, editsPerSecond: 100, seconds: smoke ? 1 : 6 };
    const calm = percentile((await runCrowd(server.port, rig, crowd, 'sync')).seen, 0.99);
    const before = await server.memory();
    // A smoke run shares the machine with everything else: its times say only that it ends.
    const cutOffMs = smoke ? 10_000 : 1_000;
    const worst = { name: '', ms: 0 };
    const p99s: number[] = [];
    for (let round = 0; round < times; round++) {
      const crowded = runCrowd(server.port, rig, crowd, 'sync');
      for (const [attack, ms] of Object.entries(await attackAll(server, rig))) {
        if (ms > cutOffMs) faults.push(`${attack}: cut off after ${Math.round(ms)} ms`);
        if (ms > worst.ms) Object.assign(worst, { name: attack, ms });
      }
      p99s.push(percentile((await crowded).seen, 0.99));
    }
    const slow = await fillSlowReader(server.port, rig);
    if (!slow.cutOff) faults.push(`a slow reader was not cut off with ${slow.sent} bytes waiting`);
    const grown = (await server.memory()) - before;
    const p99 = p99s.sort((a, b) => a - b)[p99s.length >> 1] ?? 0;
    if (grown > 100 * MIB) faults.push(`memory grew by ${Math.round(grown / MIB)} MiB`);
    if (!smoke && p99 > 2 * calm) faults.push(`others p99 ${p99.toFixed(1)} ms, ${calm.toFixed(1)} ms in calm`);
    const also = {
      attacks: NAMES.length,
      'longest to cut off': `${Math.round(worst.ms)} ms (${worst.name})`,
      'others p99': `${p99.toFixed(1)} ms, in calm ${calm.toFixed(1)} ms`,
      memory: `${Math.round(grown / MIB)} MiB more`,
    };
    return { rounds: times, faults, also };
  } finally {
    await server.kill();
    await remove();
  }
}

async function attackAll({ port }: PortProcess, rig: string): Promise<Record<string, number>> {
  return (await runProcess(ATTACKER, { port, rig, names: NAMES } satisfies AttackOrders)) as Record<string, number>;
}
