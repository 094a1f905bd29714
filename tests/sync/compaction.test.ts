import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Store } from '#server/db/store.ts';
import { keptSeeds } from '#tests/support/regressions.ts';
import { STORE_KINDS, type TestStores, testStores } from '#tests/support/store.ts';
import { runSplitSeed, runStoreSeed } from './compaction-seed.ts';

describe('checkpoint and tail, with two compactors and commits out of order', () => {
  it('show what the whole log shows, at every seed', async () => {
    for (const seed of keptSeeds('trim')) expect(await runSplitSeed(seed, 'right')).toEqual([]);
    for (let seed = 0; seed < 1_000; seed++) expect(await runSplitSeed(seed, 'right')).toEqual([]);
  });

  it('do not, when the compactor is a wrong one', async () => {
    let found = 0;
    for (let seed = 0; seed < 100; seed++) if ((await runSplitSeed(seed, 'by-highest-number')).length > 0) found += 1;
    expect(found).toBeGreaterThan(50);
  });

  describe.each(STORE_KINDS)('%s', (kind) => {
    let stores: TestStores;
    let store: Store;
    beforeAll(async () => {
      stores = await testStores(kind);
      store = await stores.open();
    });
    afterAll(() => stores.close());

    it('show what the whole log shows', async () => {
      for (let seed = 0; seed < 15; seed++) expect(await runStoreSeed(seed, store.sql)).toEqual([]);
    });
  });
});
