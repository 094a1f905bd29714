import type { Store } from '../../db/store.ts';
import type { TaskContext } from '../task-context.ts';

const PREFIX = 'archive-in:';
/** Longer than any archive is brought in. */
const HOUR_MS = 60 * 60 * 1000;

/**
 * While an archive is brought in, its crew has no member: nobody sees anything of it. The note that is kept meanwhile says what is left
 * half-way when the process dies, for the sweep to take away.
 */
export async function noteStaged({ prisma }: Store, crewId: string, at: Date): Promise<void> {
  await prisma.setting.create({ data: { key: `${PREFIX}${crewId}`, value: at.toISOString() } });
}

export const stagedNote = (crewId: string) => ({ where: { key: `${PREFIX}${crewId}` } });

/** Takes a crew that was brought in half-way away again, with everything in it. */
export async function unstage({ prisma, sql }: Store, crewId: string): Promise<void> {
  await sql.query(`delete from rig_update where rig_id in (select id from rig where crew_id = $1)`, [crewId]);
  await sql.query(`delete from type_draft_update where draft_id in (select id from type_draft where crew_id = $1)`, [
    crewId,
  ]);
  await prisma.rig.deleteMany({ where: { crewId } });
  await prisma.crew.deleteMany({ where: { id: crewId } });
  await prisma.setting.deleteMany(stagedNote(crewId));
}

/** Takes away what was left half-way by processes that died. */
export async function unstageForgotten({ store, clock }: Pick<TaskContext, 'store' | 'clock'>): Promise<void> {
  const notes = await store.prisma.setting.findMany({ where: { key: { startsWith: PREFIX } } });
  for (const { key, value } of notes)
    if (Date.parse(value) < clock.now() - HOUR_MS) await unstage(store, key.slice(PREFIX.length));
}
