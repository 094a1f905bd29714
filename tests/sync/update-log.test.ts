import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import type { Store } from '#server/db/store.ts';
import { createMemoryLog } from '#server/sync/memory-log.ts';
import { createSqlLog, DRAFT_TABLES, RIG_TABLES } from '#server/sync/sql-log.ts';
import { FencedOff } from '#server/sync/update-log.ts';
import { newDraftIn, newRigIn } from '#tests/support/new-rig.ts';
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

const SQL_LOGS = [
  { of: 'rigs', tables: RIG_TABLES, newIn: newRigIn },
  { of: 'drafts', tables: DRAFT_TABLES, newIn: newDraftIn },
];

for (const kind of STORE_KINDS) {
  let stores: TestStores;
  let store: Store;
  beforeAll(async () => {
    stores = await testStores(kind);
    store = await stores.open();
  });
  afterAll(() => stores.close());
  for (const { of, tables, newIn } of SQL_LOGS) {
    const under = (): LogUnderTest => ({ log: createSqlLog(store.sql, tables), newRig: () => newIn(store.sql) });
    describeUpdateLog(`${of}, ${kind}`, under);
  }

  describe(`update log: a draft that was published, ${kind}`, () => {
    it('takes nothing any more, and is read on', async () => {
      const log = createSqlLog(store.sql, DRAFT_TABLES);
      const draft = await newDraftIn(store.sql);
      const fence = present(await log.open(draft), 'the draft is there').fence;
      const update = { rig: draft, author: 'somebody', at: new Date(0), bytes: Uint8Array.of(0, 0) };
      expect(await log.append([{ update, fence }])).toEqual([1]);
      await store.sql.query(`update type_draft set state = 'published' where id = $1`, [draft]);
      const [late] = await log.append([{ update, fence }]);
      expect(late).toBeInstanceOf(FencedOff);
      expect((await log.open(draft))?.stored.tail.map(({ seq }) => seq)).toEqual([1]);
    });
  });
}
