import type { Store } from '../../db/store.ts';
import type { Checkpoint } from './log-rows.ts';

/** How far the index of a rig's log goes. Rows of the index behind `seq` do not count (yet). */
export interface IndexMark {
  readonly seq: number;
  /** 0, unless the beginning of the log was trimmed before it was indexed: then what was done up to there is not all known. */
  readonly begins: number;
  /** Until when that was, at the latest. */
  readonly beginsAt: Date | null;
}

const NOTHING: IndexMark = { seq: 0, begins: 0, beginsAt: null };

export async function markOf({ prisma }: Store, rigId: string): Promise<IndexMark> {
  const row = await prisma.rigChangeMark.findUnique({ where: { rigId } });
  return row === null ? NOTHING : { seq: Number(row.seq), begins: Number(row.begins), beginsAt: row.beginsAt };
}

/** The mark of an index that goes on at a checkpoint, as the rows before it are gone. */
export const beginningAt = ({ seq, at }: Checkpoint): IndexMark => ({ seq, begins: seq, beginsAt: at });

/** Moves a mark on, unless somebody else has moved it further meanwhile; answers where it stands then. */
export async function moveMark(store: Store, rigId: string, to: IndexMark): Promise<IndexMark> {
  await store.sql.query(
    `insert into rig_change_mark as mark (rig_id, seq, begins, begins_at) values ($1, $2, $3, $4)
         on conflict (rig_id) do update
        set seq = excluded.seq, begins = excluded.begins, begins_at = excluded.begins_at
      where mark.seq < excluded.seq`,
    [rigId, to.seq, to.begins, to.beginsAt],
  );
  return markOf(store, rigId);
}
