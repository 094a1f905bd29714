import { useQuery } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { copiedTypes } from '#engine/type/copied-types.ts';
import { useTRPC } from '../kit/data/trpc.tsx';
import type { RigStore } from './rig-store.ts';

/** How long what the library said is taken for news, in milliseconds; coming back to the page asks again after that. */
const FRESH_MS = 30_000;

/** The most types that are asked for at once. */
const MOST = 2000;

const NEVER = () => () => undefined;

/** Keeps an open rig told of the newest revisions of the types it has copies of, as long as the server can be reached. */
export function useLibraryNews(store: RigStore | undefined, crewId: string | undefined): void {
  const modes = useSyncExternalStore(store?.subscribe ?? NEVER, () => store?.rig().modes ?? EMPTY_RIG.modes);
  const typeIds = useMemo(() => copiedTypes({ modes }).slice(0, MOST), [modes]);
  const input = { crewId: crewId ?? '', typeIds: [...typeIds] };
  const enabled = store !== undefined && crewId !== undefined && typeIds.length > 0;
  const asked = useQuery(useTRPC().library.newest.queryOptions(input, { enabled, staleTime: FRESH_MS }));
  const newest = asked.data;
  useEffect(() => {
    if (store === undefined || newest === undefined) return;
    store.setLibrary(new Map(newest.map(({ typeId, number, hash }) => [typeId, { number, hash }])));
  }, [store, newest]);
}
