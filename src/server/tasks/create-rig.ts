import { type Result, refuse } from '#base/result.ts';
import type { Refusal } from '#wire/refusal.ts';
import type { RigKind, RigSummary } from '#wire/rigs.ts';
import { addRig, isVenueOf } from './add-rig.ts';
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
  if (!(await isVenueOf(store, crewId, venueId))) return refuse('no-such-venue');
  const id = makeId();
  const at = new Date(clock.now());
  const audit = { crewId, by, at, kind: 'rig-made', rigId: id, what: { rig: name } } as const;
  return addRig(store, { id, crewId, venueId, name, kind, by, at, audit: [audit] });
}
