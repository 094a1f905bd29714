import { keepSeed, keptSeeds } from '#tests/support/regressions.ts';
import { type StoreKind, testStores } from '#tests/support/store.ts';
import { runSplitSeed, runStoreSeed } from '#tests/sync/compaction-seed.ts';
import type { ProofOutcome, ProofRun } from './frame/proof.ts';

export const name = 'trim';
export const bar = 'checkpoint and tail equal the whole log; a wrong compactor is found out';
export const rounds = { usual: 20_000, smoke: 100 };

/** Each round is one seed on the log taken apart; one in fifty is tried on the real stores too. */
export async function run(how: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  const kept = keptSeeds('trim');
  let wrongFound = 0;
  for (let round = 0; round < how.rounds; round++) {
    const seed = kept[round] ?? how.seed * 10_000_000 + round;
    const found = await runSplitSeed(seed, 'right');
    if (found.length > 0) keepSeed('trim', seed);
    faults.push(...found.map((fault) => `seed ${seed}: ${fault}`));
    if ((await runSplitSeed(seed, 'by-highest-number')).length > 0) wrongFound += 1;
  }
  if (wrongFound === 0) faults.push(`a wrong compactor was not found out in ${how.rounds} rounds`);
  const onStores = Math.ceil(how.rounds / 50);
  for (const kind of how.stores) faults.push(...(await onStore(kind, how.seed, onStores)));
  return {
    rounds: how.rounds,
    faults,
    also: { 'wrong compactor found in': wrongFound, 'rounds on each store': onStores },
  };
}

async function onStore(kind: StoreKind, seed: number, count: number): Promise<string[]> {
  const stores = await testStores(kind);
  try {
    const { sql } = await stores.open();
    const faults: string[] = [];
    for (let round = 0; round < count; round++)
      for (const fault of await runStoreSeed(seed * 10_000_000 + round, sql)) faults.push(`${kind}: ${fault}`);
    return faults;
  } finally {
    await stores.close();
  }
}
