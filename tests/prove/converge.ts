import { keepSeed, keptSeeds } from '#tests/support/regressions.ts';
import { runSeed } from '#tests/sync/run-seed.ts';
import type { ProofOutcome, ProofRun } from './frame/proof.ts';

export const name = 'converge';
export const bar =
  'every replica, the log, checkpoint and tail, and an independent model read as the same rig; no false saved';
export const rounds = { usual: 20_000, smoke: 100 };

/** Each round is one seed of the simulation; a seed that fails is kept for the tests. */
export async function run(how: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  const kept = keptSeeds('converge');
  for (let round = 0; round < how.rounds; round++) {
    const seed = kept[round] ?? how.seed * 10_000_000 + round;
    const found = await runSeed(seed);
    if (found.length > 0) keepSeed('converge', seed);
    faults.push(...found);
  }
  return { rounds: how.rounds, faults };
}
