import { present } from '#base/assert.ts';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import { rigSummaries } from './rig-summaries.ts';
import { storeNewRig } from './store-new-rig.ts';
import type { TaskContext } from './task-context.ts';

interface NewRig {
  readonly by: { readonly id: string; readonly name: string };
  readonly crewId: string;
  readonly venueId: string | null;
  readonly name: string;
  readonly kind: RigKind;
}

/** A new, empty rig of a crew, at one of the crew's own venues or at none. */
export async function createRig(
  { store, clock, makeId }: TaskContext,
  { by, crewId, venueId, name, kind }: NewRig,
): Promise<Result<RigSummary, Refusal>> {
  if (venueId !== null && !(await store.prisma.venue.findFirst({ where: { id: venueId, crewId } })))
    return refuse('no-such-venue');
  if ((await store.prisma.rig.count({ where: { crewId, removedAt: null } })) >= CAPS.rigsPerCrew)
    return refuse('too-many');
  const id = makeId();
  const at = new Date(clock.now());
  const audit = { crewId, by, at, kind: 'rig-made', rigId: id, what: { rig: name } } as const;
  await storeNewRig(store, { id, crewId, venueId, name, kind, userId: by.id, at, audit });
  const [summary] = await rigSummaries(store, { userId: by.id, rigId: id });
  return ok(present(summary, `rig ${id} was made for ${by.id}, who is not in crew ${crewId}`));
}
