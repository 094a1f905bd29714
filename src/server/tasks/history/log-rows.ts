import type { Store } from '../../db/store.ts';
import type { LoggedUpdate } from '../../stored/stored-rig.ts';

/** A row of a rig's log with who wrote it and when. */
export interface AuthoredRow extends LoggedUpdate {
  readonly author: string;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
}

/** Bytes of updates that are read at once, beside the first of them. */
const MOST_BYTES = 16 * 1024 * 1024;

/** The rows of a log behind `after`, up to and with `upTo`: the first of them, `most` at most, up to the first hole. */
export async function logRows(
  { sql }: Pick<Store, 'sql'>,
  rigId: string,
  { after, upTo, most }: { readonly after: number; readonly upTo: number; readonly most: number },
): Promise<readonly AuthoredRow[]> {
  const rows = await sql.query<AuthoredRow>(
    `select seq, author, (extract(epoch from at) * 1000)::float8 as at, bytes
       from (select seq, author, at, bytes, sum(octet_length(bytes)) over (order by seq) - octet_length(bytes) as ahead
               from (select * from rig_update where rig_id = $1 and seq > $2 and seq <= $3 order by seq limit $4) as first)
         as counted
      where ahead < $5
      order by seq`,
    [rigId, after, upTo, most, MOST_BYTES],
  );
  const hole = rows.findIndex(({ seq }, nth) => Number(seq) !== after + 1 + nth);
  // In a buffer of its own: what decodes it trusts declared lengths.
  return (hole < 0 ? rows : rows.slice(0, hole)).map((row) => ({
    ...row,
    seq: Number(row.seq),
    bytes: Uint8Array.from(row.bytes),
  }));
}

/** A merged state of a log, and when it was made. */
export interface Checkpoint extends LoggedUpdate {
  readonly at: Date;
}

/** The newest checkpoint that holds nothing behind `seq`. */
export async function checkpointUpTo({ prisma }: Store, rigId: string, seq: number): Promise<Checkpoint | undefined> {
  return checkpointOf(
    await prisma.rigCheckpoint.findFirst({ where: { rigId, seq: { lte: seq } }, orderBy: { seq: 'desc' } }),
  );
}

/** The oldest checkpoint that holds something behind `seq`. */
export async function checkpointBehind({ prisma }: Store, rigId: string, seq: number): Promise<Checkpoint | undefined> {
  return checkpointOf(
    await prisma.rigCheckpoint.findFirst({ where: { rigId, seq: { gt: seq } }, orderBy: { seq: 'asc' } }),
  );
}

function checkpointOf(
  row: { readonly seq: bigint; readonly bytes: Uint8Array; readonly at: Date } | null,
): Checkpoint | undefined {
  return row === null ? undefined : { seq: Number(row.seq), bytes: Uint8Array.from(row.bytes), at: row.at };
}
