import { describe, expect, it } from 'vitest';
import { keptSeeds } from '#tests/support/regressions.ts';
import { runSeed } from './run-seed.ts';
import { createWrongCompactor } from './wrong-compactor.ts';

const SEEDS = 1_500;

describe('any number of people, devices and processes', () => {
  it('read as the same rig, and nobody is told what is not so: seeds that once failed', async () => {
    for (const seed of keptSeeds('converge'))
      for (const how of [{}, { steps: 60 }]) expect(await runSeed(seed, how)).toEqual([]);
  });

  it(`read as the same rig, and nobody is told what is not so: ${SEEDS} seeds`, async () => {
    for (let seed = 0; seed < SEEDS; seed++) expect(await runSeed(seed)).toEqual([]);
  });

  it('do not, when the compactor is a wrong one', async () => {
    let found = 0;
    for (let seed = 0; seed < 60; seed++) {
      const faults = await runSeed(seed, { steps: 200, memory: createWrongCompactor() });
      if (faults.length > 0) found += 1;
    }
    // It shows only where a rig was read back between a checkpoint and the next.
    expect(found).toBeGreaterThan(3);
  });
});
