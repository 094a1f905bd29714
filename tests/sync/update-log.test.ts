import { afterAll, beforeAll } from 'vitest';
import { createMemoryLog } from '#server/sync/memory-log.ts';
import { createSqlLog } from '#server/sync/sql-log.ts';
import { newRigIn } from '#tests/support/new-rig.ts';
import { STORE_KINDS, type TestStores, testStores } from '#tests/support/store.ts';
import { describeUpdateLog, type LogUnderTest } from '#tests/support/update-log-contract.ts';

let rigs = 0;
describeUpdateLog('memory', () => {
  const log = createMemoryLog();
  const newRig = async () => {
    const rig = `rig${++rigs}`;
    log.createRig(rig);
    return rig;
  };
  return { log, newRig };
});

for (const kind of STORE_KINDS) {
  let stores: TestStores;
  let under: LogUnderTest;
  beforeAll(async () => {
    stores = await testStores(kind);
    const store = await stores.open();
    under = { log: createSqlLog(store.sql), newRig: () => newRigIn(store.sql) };
  });
  afterAll(() => stores.close());
  describeUpdateLog(kind, () => under);
}
