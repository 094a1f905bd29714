import { rowsOf } from '#base/table.ts';
import { readRig } from '#document/read/rig-reader.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import type { Rig } from '#engine/model/rig.ts';
import { CAPS } from '#wire/caps.ts';
import type { TypeUse, WhereUsed } from '#wire/library.ts';
import type { Store } from '../../db/store.ts';
import type { TaskContext } from '../task-context.ts';
import type { TypeOfCrew } from './read-type.ts';

/** The rigs of a crew that have pinned a mode of a type, read as they stand; those changed last are looked at first. */
export async function whereUsed(
  { store, readRigDoc }: Pick<TaskContext, 'store' | 'readRigDoc'>,
  { crewId, typeId }: TypeOfCrew,
): Promise<WhereUsed> {
  const rigs = await rigsByChange(store, crewId);
  const uses: TypeUse[] = [];
  const looked = rigs.slice(0, CAPS.rigsLookedThrough);
  for (const { id, name } of looked) {
    const modes = (await readRigDoc(id, (doc) => modesOf(readRig(doc), typeId))) ?? [];
    if (modes.length > 0) uses.push({ rigId: id, rigName: name, modes });
    // Rigs that are in memory are read without waiting for anything: everybody's edits get a turn between two of them.
    await new Promise((resolve) => setImmediate(resolve));
  }
  return { uses, looked: looked.length, rigs: rigs.length };
}

async function rigsByChange(store: Store, crewId: string) {
  return store.sql.query<{ readonly id: string; readonly name: string }>(
    `select r.id, r.name
       from rig r
      where r.crew_id = $1 and r.removed_at is null
      order by greatest(
                 r.created_at,
                 (select u.at from rig_update u where u.rig_id = r.id order by u.seq desc limit 1),
                 (select p.at from rig_checkpoint p where p.rig_id = r.id order by p.seq desc limit 1)
               ) desc, r.id`,
    [crewId],
  );
}

function modesOf(rig: Rig, typeId: string): TypeUse['modes'] {
  const pinned = [...rowsOf(rig.modes)].flatMap(({ id, mode, pin }) =>
    pin?.typeId === typeId ? [{ id, mode, number: pin.number, hash: pin.hash }] : [],
  );
  if (pinned.length === 0) return [];
  const units = new Map<string, number>();
  for (const fixture of rowsOf(rig.fixtures)) {
    const id = modeOf(rig, fixture)?.id;
    if (id !== undefined) units.set(id, (units.get(id) ?? 0) + 1);
  }
  return pinned.map(({ id, ...mode }) => ({ ...mode, units: units.get(id) ?? 0 }));
}
