import { useQuery } from '@tanstack/react-query';
import { z } from 'zod';
import { Provenance } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { Role } from '#wire/role.ts';
import { useTRPC } from './trpc.tsx';
import { useMe } from './use-me.ts';
import { type Served, useServed } from './use-served.ts';

const KeptRig = z.object({
  id: z.string(),
  name: z.string(),
  kind: z.enum(['show', 'house']),
  crewId: z.string(),
  crewName: z.string(),
  venueId: z.string().nullable(),
  venueName: z.string().nullable(),
  role: Role,
  changedAt: z.string(),
  // Copies kept by a program from before it was said have none.
  startedFrom: Provenance.nullable().default(null),
});
const KeptRigs = z.array(KeptRig).readonly();

const readRig = (value: unknown): RigSummary | undefined => KeptRig.safeParse(value).data;
const readRigs = (value: unknown): readonly RigSummary[] | undefined => KeptRigs.safeParse(value).data;

/** The rigs of my crews, the last changed first; without a network, those this device knows. */
export function useRigs(): Served<readonly RigSummary[]> {
  const trpc = useTRPC();
  const user = useMe().value?.user?.id;
  const asked = useQuery(trpc.rigs.list.queryOptions(undefined, { enabled: user !== undefined }));
  return useServed(asked, user === undefined ? null : `rigs:${user}`, readRigs);
}

/** What a rig is and whose, and what I may do with it; without a network, as it was the last time it was opened here. */
export function useRig(rigId: string): Served<RigSummary> {
  const trpc = useTRPC();
  const user = useMe().value?.user?.id;
  const asked = useQuery(trpc.rigs.get.queryOptions({ rigId }, { enabled: user !== undefined }));
  return useServed(asked, user === undefined ? null : `rig:${user}:${rigId}`, readRig);
}
