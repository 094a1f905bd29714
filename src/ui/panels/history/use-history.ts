import { keepPreviousData, useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import type { Rig } from '#engine/model/rig.ts';
import type { HistoryFilter, HistoryPerson, HistoryStep } from '#wire/history.ts';
import { useTRPC } from '../../kit/data/trpc.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';

export interface HistorySteps {
  /** Undefined until the server has answered. */
  readonly steps: readonly HistoryStep[] | undefined;
  readonly unknownUntil: string | null;
  readonly error: { readonly message: string } | null;
  /** Undefined when all of it is there. */
  readonly more: (() => void) | undefined;
  /** Whether the rig has changed since the server was asked. */
  readonly old: boolean;
  readonly renew: () => void;
}

/** What was done to an open rig, as far as it is committed. What I do myself is asked for again once it is saved. */
export function useHistory(store: RigStore, rigId: string, filter: HistoryFilter): HistorySteps {
  const options = useTRPC().history.steps.infiniteQueryOptions(
    { rigId, filter },
    {
      getNextPageParam: ({ next }) => next,
      initialCursor: null,
      placeholderData: keepPreviousData,
      // Who comes back from a moment has perhaps just gone back to it.
      refetchOnMount: 'always',
    },
  );
  const asked = useInfiniteQuery(options);
  const rig = useCalmRig(store);
  const undo = useSyncExternalStore(store.subscribeHistory, store.nextUndo);
  const saved = useSyncExternalStore(store.subscribeLink, () => store.status().state === 'saved');
  const at = useRef<{ readonly rig: Rig; readonly undo: typeof undo; readonly of: number }>({ rig, undo, of: 0 });
  if (at.current.of !== asked.dataUpdatedAt) at.current = { rig, undo, of: asked.dataUpdatedAt };
  const old = asked.dataUpdatedAt > 0 && !asked.isFetching && at.current.rig !== rig;
  // What was asked while an edit of mine was on its way may have been answered without it.
  const unsure = useRef(false);
  if (asked.isFetching && !saved) unsure.current = true;
  const mine = saved && !asked.isFetching && (unsure.current || (old && at.current.undo !== undo));
  const { refetch } = asked;
  useEffect(() => {
    if (!mine) return;
    unsure.current = false;
    void refetch();
  }, [mine, refetch]);
  const pages = asked.data?.pages;
  return {
    steps: pages?.flatMap(({ steps }) => steps),
    unknownUntil: pages?.[0]?.unknownUntil ?? null,
    error: asked.error,
    more: asked.hasNextPage ? () => void asked.fetchNextPage() : undefined,
    old,
    renew: () => void refetch(),
  };
}

/** Everybody who ever changed a rig. */
export function usePeople(rigId: string): readonly HistoryPerson[] {
  return useQuery(useTRPC().history.people.queryOptions({ rigId })).data ?? [];
}
