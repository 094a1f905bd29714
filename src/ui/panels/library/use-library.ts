import { useQuery } from '@tanstack/react-query';
import type { CrewDetail } from '#wire/crews.ts';
import type { NamedDraft, TypeDetails, TypeRevision, TypeSummary, WhereUsed } from '#wire/library.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';

/** What the server answered so far: undefined until it did, and why it refused. */
export interface Answer<T> {
  readonly value: T | undefined;
  readonly error: { readonly message: string } | null;
}

interface TypeAddress {
  readonly crewId: string;
  readonly typeId: string;
}

/** A revision never changes: asked for once. */
const FOREVER = { staleTime: Number.POSITIVE_INFINITY };

export function useCrew(crewId: string): Answer<CrewDetail> {
  const asked = useQuery(useTRPC().crews.get.queryOptions({ crewId }));
  return { value: asked.data, error: asked.error };
}

/** Every type of a crew's library, with those built in. */
export function useTypes(crewId: string): Answer<readonly TypeSummary[]> {
  const asked = useQuery(useTRPC().library.list.queryOptions({ crewId }));
  return { value: asked.data, error: asked.error };
}

/** What the crew is writing, by the name each draft has so far. */
export function useDrafts(crewId: string): Answer<readonly NamedDraft[]> {
  const asked = useQuery(useTRPC().library.drafts.queryOptions({ crewId }));
  return { value: asked.data, error: asked.error };
}

export function useType(address: TypeAddress): Answer<TypeDetails> {
  const asked = useQuery(useTRPC().library.get.queryOptions(address));
  return { value: asked.data, error: asked.error };
}

export function useRevision(address: TypeAddress & { readonly number: number }): Answer<TypeRevision> {
  const asked = useQuery(useTRPC().library.revision.queryOptions(address, FOREVER));
  return { value: asked.data, error: asked.error };
}

export function useUses(address: TypeAddress): Answer<WhereUsed> {
  const asked = useQuery(useTRPC().library.whereUsed.queryOptions(address));
  return { value: asked.data, error: asked.error };
}
