import { useQuery } from '@tanstack/react-query';
import type { ProposalsOfRig } from '#wire/proposals.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';

/** Answers of others come now and then: asked for twice a minute while the page is looked at. */
const EVERY_MS = 30_000;

/** What was proposed to a rig and by it; undefined until the server has answered. */
export function useProposals(rigId: string): ProposalsOfRig | undefined {
  const trpc = useTRPC();
  return useQuery(trpc.proposals.listForRig.queryOptions({ rigId }, { refetchInterval: EVERY_MS })).data;
}
