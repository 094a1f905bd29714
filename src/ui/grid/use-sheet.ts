import { useCallback, useSyncExternalStore } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import type { RigStore } from '../live/rig-store.ts';
import type { RowView } from '../live/row-views.ts';
import type { Sheet, SheetState } from './sheet.ts';

/** One part of what the sheet shows; draws again only when `pick` answers another value. */
export function useSheet<T>(sheet: Sheet, pick: (state: SheetState) => T): T {
  return useSyncExternalStore(sheet.subscribe, () => pick(sheet.state()));
}

/** One row as it is drawn; draws again only when that row changes. */
export function useRow(store: RigStore, id: FixtureId): RowView | undefined {
  const subscribe = useCallback((listen: () => void) => store.subscribeRow(id, listen), [store, id]);
  return useSyncExternalStore(subscribe, () => store.row(id));
}
