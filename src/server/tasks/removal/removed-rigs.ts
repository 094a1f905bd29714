import type { RemovedRig } from '#wire/rigs.ts';
import type { Store } from '../../db/store.ts';
import { namesOf } from '../names-of.ts';

/** How many days a removed rig can be brought back, after which the sweep destroys it. */
const DAYS_KEPT = 30;
export const KEPT_MS = DAYS_KEPT * 24 * 60 * 60 * 1000;

/** The removed rigs of a crew that can still be brought back, the last removed first. */
export async function removedRigs(store: Store, crewId: string): Promise<readonly RemovedRig[]> {
  const rows = await store.prisma.rig.findMany({
    where: { crewId, removedAt: { not: null } },
    orderBy: [{ removedAt: 'desc' }, { id: 'asc' }],
  });
  const names = await namesOf(
    store,
    rows.flatMap(({ removedBy }) => removedBy ?? []),
  );
  return rows.flatMap(({ id, name, kind, removedAt, removedBy }) => {
    if (removedAt === null) return [];
    const until = new Date(removedAt.getTime() + KEPT_MS);
    const by = names.get(removedBy ?? '') ?? '';
    return [{ id, name, kind, by, at: removedAt.toISOString(), until: until.toISOString() }];
  });
}
