import type { MemoryLog } from '#server/sync/memory-log.ts';
import { World } from './world.ts';

const flush = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Long worlds find what takes a history, short ones what goes wrong at the beginning and the end. */
const LENGTHS = [60, 120, 180, 300];

/** Plays one world through; answers the first faults found and when, or nothing. `memory` is the log to play it on. */
export async function runSeed(
  seed: number,
  {
    steps = LENGTHS[seed % LENGTHS.length] ?? 60,
    memory,
  }: { readonly steps?: number; readonly memory?: MemoryLog } = {},
): Promise<readonly string[]> {
  const world = new World(seed, memory);
  for (let step = 0; step < steps; step++) {
    world.act();
    await flush();
    const faults = world.faults();
    if (faults.length > 0) return faults.map((fault) => `seed ${seed}, step ${step}: ${fault}`);
  }
  await world.settle(flush);
  return (await world.faultsAtRest()).map((fault) => `seed ${seed}, at rest: ${fault}`);
}
