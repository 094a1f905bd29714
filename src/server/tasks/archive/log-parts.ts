import { assert, present } from '#base/assert.ts';
import { CAPS } from '#wire/caps.ts';
import type { ArchivedLog } from '#wire/crew-archive.ts';
import type { PackedEntry } from '../../archive/pack.ts';
import type { Sql } from '../../db/sql.ts';
import { jsonEntry } from './json-entry.ts';

/** The logs there are: of a rig, or of a draft. */
export const LOGS = {
  rig: { table: 'rig_update', key: 'rig_id' },
  draft: { table: 'type_draft_update', key: 'draft_id' },
} as const;
export type LogKind = keyof typeof LOGS;

interface LogOf {
  readonly kind: LogKind;
  readonly id: string;
  /** Up to which update it is read. */
  readonly head: number;
  /** The folder it goes into. */
  readonly folder: string;
}

interface Row {
  readonly seq: number;
  readonly author: string;
  readonly at: Date;
  readonly length: number;
}

/** A log in parts: for each, who sent which update when, and beside it their bytes, one after the other. */
export async function* logParts(sql: Sql, { kind, id, head, folder }: LogOf): AsyncGenerator<PackedEntry> {
  const { table, key } = LOGS[kind];
  let part = 0;
  for (let from = 1; from <= head; part += 1) {
    const rows = await sql.query<Row>(
      `select seq, author, at, octet_length(bytes) as length from ${table}
        where ${key} = $1 and seq >= $2 and seq <= $3 order by seq limit $4`,
      [id, from, head, CAPS.archiveLogRows],
    );
    assert(Number(rows[0]?.seq) === from, `the log of ${kind} ${id} has no row ${from}`);
    const taken = upToCap(rows);
    const to = from + taken.length - 1;
    assert(Number(taken.at(-1)?.seq) === to, `the log of ${kind} ${id} has a gap before ${to}`);
    const [found] = await sql.query<{ readonly bytes: Uint8Array }>(
      `select string_agg(bytes, ''::bytea order by seq) as bytes from ${table}
        where ${key} = $1 and seq >= $2 and seq <= $3`,
      [id, from, to],
    );
    const log: ArchivedLog = {
      from,
      updates: taken.map(({ author, at, length }) => [author, at.toISOString(), length]),
    };
    yield jsonEntry(`${folder}/log/${part + 1}.json`, log);
    yield { name: `${folder}/log/${part + 1}.bin`, bytes: present(found, `no bytes of ${kind} ${id}`).bytes };
    from = to + 1;
  }
}

/** As many rows as fit into one part, and at least one. */
function upToCap(rows: readonly Row[]): readonly Row[] {
  let bytes = 0;
  const over = rows.findIndex(({ length }, nth) => {
    bytes += length;
    return nth > 0 && bytes > CAPS.archiveLogBytes;
  });
  return over < 0 ? rows : rows.slice(0, over);
}
