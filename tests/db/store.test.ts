import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isTaken } from '#server/db/is-taken.ts';
import type { Store } from '#server/db/store.ts';
import { STORE_KINDS, type TestStores, testStores } from '#tests/support/store.ts';

// One contract, both stores: whatever is written against a Store works on either.
describe.each(STORE_KINDS)('the %s store', (kind) => {
  let stores: TestStores;
  let store: Store;
  beforeAll(async () => {
    stores = await testStores(kind);
    store = await stores.open();
  });
  afterAll(() => stores.close());

  it('says what it is', () => {
    expect(store.kind).toBe(kind);
  });

  it('has a table for every model, in snake case', async () => {
    const rows = await store.sql.query<{ name: string }>(
      `select table_name as name from information_schema.tables where table_schema = 'public' order by 1`,
    );
    const names = rows.map((row) => row.name);
    expect(names).toEqual([
      '_prisma_migrations',
      'account',
      'audit_entry',
      'author',
      'crew',
      'fixture_type',
      'handover',
      'invitation',
      'list_mapping',
      'membership',
      'proposal',
      'rig',
      'rig_change',
      'rig_change_mark',
      'rig_checkpoint',
      'rig_revision',
      'rig_update',
      'session',
      'setting',
      'type_draft',
      'type_draft_checkpoint',
      'type_draft_update',
      'type_revision',
      'user',
      'venue',
      'verification',
    ]);
    const columns = await store.sql.query<{ name: string }>(
      `select distinct column_name as name from information_schema.columns
        where table_schema = 'public' and column_name <> lower(column_name)`,
    );
    expect(columns).toEqual([]);
  });

  it('gives back bytes, big numbers, times and nulls as they went in', async () => {
    const bytes = Uint8Array.from({ length: 256 }, (_, index) => index);
    const at = new Date('2026-03-29T01:30:00.123Z');
    const [row] = await store.sql.query<{ bytes: Uint8Array; n: number; at: Date; nothing: null }>(
      'select $1::bytea as bytes, $2::bigint as n, $3::timestamptz as at, $4::text as nothing',
      [bytes, Number.MAX_SAFE_INTEGER, at, null],
    );
    expect(row && Array.from(row.bytes)).toEqual(Array.from(bytes));
    expect(row?.bytes).toBeInstanceOf(Uint8Array);
    expect(row?.n).toBe(Number.MAX_SAFE_INTEGER);
    expect(row?.at).toEqual(at);
    expect(row?.nothing).toBeNull();
  });

  it('takes whole columns as arrays, so that many rows go in by one statement', async () => {
    const blobs = [new Uint8Array([0, 1, 255]), new Uint8Array([]), new Uint8Array([34, 92, 39, 44, 123, 125])];
    const times = [new Date(0), new Date(1), new Date(86_400_000)];
    const rows = await store.sql.query<{ text: string; n: number; bytes: Uint8Array; at: Date }>(
      'select * from unnest($1::text[], $2::bigint[], $3::bytea[], $4::timestamptz[]) as t(text, n, bytes, at)',
      [['a', 'quote " and \\ and ,', ''], [1, 2, 3], blobs, times],
    );
    expect(rows.map((row) => row.text)).toEqual(['a', 'quote " and \\ and ,', '']);
    expect(rows.map((row) => row.n)).toEqual([1, 2, 3]);
    expect(rows.map((row) => Array.from(row.bytes))).toEqual(blobs.map((blob) => Array.from(blob)));
    expect(rows.map((row) => row.at)).toEqual(times);
  });

  it('keeps a transaction that ends well, and nothing of one that throws', async () => {
    const put = (key: string) => `insert into setting (key, value) values ('${key}', 'x')`;
    await store.sql.transaction(async (sql) => {
      await sql.query(put('kept'));
    });
    const failed = store.sql.transaction(async (sql) => {
      await sql.query(put('dropped'));
      throw new Error('stop');
    });
    await expect(failed).rejects.toThrow('stop');
    const rows = await store.sql.query<{ key: string }>(`select key from setting where key in ('kept', 'dropped')`);
    expect(rows).toEqual([{ key: 'kept' }]);
  });

  it('answers a unique rule that is broken as P2002, from Prisma and inside its transactions', async () => {
    const { prisma } = store;
    await prisma.setting.create({ data: { key: 'twice', value: 'a' } });
    const again = prisma.setting.create({ data: { key: 'twice', value: 'b' } });
    const error = await again.then(
      () => undefined,
      (reason: unknown) => reason,
    );
    expect(isTaken(error)).toBe(true);
    const inside = await prisma
      .$transaction((tx) => tx.setting.create({ data: { key: 'twice', value: 'c' } }))
      .then(
        () => undefined,
        (reason: unknown) => reason,
      );
    expect(isTaken(inside)).toBe(true);
    expect(isTaken(new Error('something else'))).toBe(false);
  });

  it('reads by Prisma what was written by plain SQL, times included, and the other way round', async () => {
    const at = new Date('2026-07-01T22:15:00.250Z');
    await store.prisma.crew.create({ data: { id: 'c1', name: 'Crew', createdAt: at } });
    const [crew] = await store.sql.query<{ at: Date }>(`select created_at as at from crew where id = 'c1'`);
    expect(crew?.at).toEqual(at);
    await store.sql.query(
      `insert into rig (id, crew_id, name, kind, created_at) values ('r1', 'c1', 'Rig', 'show', $1)`,
      [at],
    );
    await store.sql.query('insert into rig_update (rig_id, seq, author, at, bytes) values ($1, $2, $3, $4, $5)', [
      'r1',
      1,
      'u',
      at,
      new Uint8Array([7, 0, 255]),
    ]);
    const update = await store.prisma.rigUpdate.findFirstOrThrow({ where: { rigId: 'r1' } });
    expect(update.at).toEqual(at);
    expect(update.seq).toBe(1n);
    expect(Array.from(update.bytes)).toEqual([7, 0, 255]);
    const rig = await store.prisma.rig.findUniqueOrThrow({ where: { id: 'r1' } });
    expect([rig.head, rig.fence, rig.removedAt, rig.createdAt]).toEqual([0n, 0n, null, at]);
  });

  it('runs twenty transactions at once, each whole', async () => {
    await store.prisma.setting.create({ data: { key: 'count', value: '0' } });
    const add = () =>
      store.prisma.$transaction(async (tx) => {
        await tx.$queryRaw`select 1 from setting where key = 'count' for update`;
        const { value } = await tx.setting.findUniqueOrThrow({ where: { key: 'count' } });
        await tx.setting.update({ where: { key: 'count' }, data: { value: String(Number(value) + 1) } });
      });
    await Promise.all(Array.from({ length: 20 }, add));
    expect((await store.prisma.setting.findUniqueOrThrow({ where: { key: 'count' } })).value).toBe('20');
  });

  it('starts empty and separate from every other store', async () => {
    const other = await stores.open();
    expect(await other.prisma.setting.count()).toBe(0);
  });
});
