import { useQuery } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { rowsOf, type Table } from '#base/table.ts';
import { EMPTY_RIG, type Mode } from '#engine/model/rig.ts';
import { useTRPC } from '../kit/data/trpc.tsx';
import type { RigStore } from './rig-store.ts';

/** How long what the library said is taken for news, in milliseconds; coming back to the page asks again after that. */
const FRESH_MS = 30_000;

const NEVER = () => () => undefined;

/** Keeps an open rig told of the newest revisions of the types it has copies of, as long as the server can be reached. */
export function useLibraryNews(store: RigStore | undefined, crewId: string | undefined): void {
  const modes = useSyncExternalStore(store?.subscribe ?? NEVER, () => store?.rig().modes ?? EMPTY_RIG.modes);
  const typeIds = useMemo(() => copiedTypes(modes), [modes]);
  const input = { crewId: crewId ?? '', typeIds: [...typeIds] };
  const enabled = store !== undefined && crewId !== undefined && typeIds.length > 0;
  const asked = useQuery(useTRPC().library.newest.queryOptions(input, { enabled, staleTime: FRESH_MS }));
  const newest = asked.data;
  useEffect(() => {
    if (store === undefined || newest === undefined) return;
    store.setLibrary(new Map(newest.map(({ typeId, number, hash }) => [typeId, { number, hash }])));
  }, [store, newest]);
}

/** The most types that are asked for at once. */
const MOST = 2000;

function copiedTypes(modes: Table<Mode>): readonly string[] {
  const ids = new Set<string>();
  for (const { pin } of rowsOf(modes)) if (pin !== null) ids.add(pin.typeId);
  return [...ids].sort().slice(0, MOST);
}
