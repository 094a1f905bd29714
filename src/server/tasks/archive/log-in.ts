import { ArchivedLog } from '#wire/crew-archive.ts';
import type { Sql } from '../../db/sql.ts';
import type { LoggedUpdate } from '../../stored/stored-rig.ts';
import { unreadable } from './archive-refused.ts';
import { LOGS, type LogKind } from './log-parts.ts';
import type { PartsIn } from './parts-in.ts';

/** One part of a log: its updates, and who sent which when. */
export interface LogPart {
  readonly from: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly updates: ArchivedLog['updates'];
}

/** The log of a folder, up to its head and without a gap. */
export function logOf(parts: PartsIn, folder: string, head: number): readonly LogPart[] {
  const read: LogPart[] = [];
  let next = 1;
  for (let part = 1; next <= head; part += 1) {
    const name = `${folder}/log/${part}.json`;
    const { from, updates } = parts.json(name, ArchivedLog);
    const bytes = parts.bytes(`${folder}/log/${part}.bin`);
    const length = updates.reduce((sum, [, , each]) => sum + each, 0);
    if (from !== next || updates.length === 0 || length !== bytes.length) throw unreadable(name);
    next += updates.length;
    read.push({ from, bytes, updates });
  }
  if (next !== head + 1) throw unreadable(`${folder}/log/${read.length}.json`);
  return read;
}

/** Its updates one by one, each in a buffer of its own: what decodes them trusts declared lengths. */
export function updatesOf(log: readonly LogPart[]): readonly LoggedUpdate[] {
  return log.flatMap(({ from, bytes, updates }) => {
    let at = 0;
    return updates.map(([, , length], nth) => {
      const own = bytes.slice(at, at + length);
      at += length;
      return { seq: from + nth, bytes: own };
    });
  });
}

/** Stores one part of a log, cut up by the database. */
export async function storeLogPart(
  sql: Sql,
  { kind, id, person }: { readonly kind: LogKind; readonly id: string; readonly person: (author: string) => string },
  { from, bytes, updates }: LogPart,
): Promise<void> {
  const { table, key } = LOGS[kind];
  let start = 1;
  const starts = updates.map(([, , length]) => {
    const own = start;
    start += length;
    return own;
  });
  await sql.query(
    `insert into ${table} (${key}, seq, author, at, bytes)
     select $1, $2::bigint + nth, author, to_timestamp(at / 1000), substring($8::bytea from start for length)
       from unnest($3::int[], $4::text[], $5::float8[], $6::int[], $7::int[]) as sent(nth, author, at, start, length)`,
    [
      id,
      from,
      updates.map((_, nth) => nth),
      updates.map(([author]) => person(author)),
      updates.map(([, at]) => new Date(at).getTime()),
      starts,
      updates.map(([, , length]) => length),
      bytes,
    ],
  );
}
