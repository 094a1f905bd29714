import { useSyncExternalStore } from 'react';
import type { DraftStore } from '../live/draft-store.ts';
import type { Desk, DeskState } from './desk.ts';

/** One part of what the desk shows; draws again only when `pick` answers another value. */
export function useDesk<T>(desk: Desk, pick: (state: DeskState) => T): T {
  return useSyncExternalStore(desk.subscribe, () => pick(desk.state()));
}

/** The draft as it stands, and what it amounts to. */
export const useReading = (store: DraftStore) => useSyncExternalStore(store.subscribe, store.reading);

/** Whether the draft takes edits now. */
export const useWritable = (store: DraftStore): boolean => useSyncExternalStore(store.subscribeLink, store.canEdit);
