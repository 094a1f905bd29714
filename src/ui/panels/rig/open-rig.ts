import { createContext, useContext, useSyncExternalStore } from 'react';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import type { RigStore } from '../../live/rig-store.ts';

/** The rig that is open on this page; undefined until it is. */
export const OpenRig = createContext<RigStore | undefined>(undefined);

const NEVER = () => () => undefined;

/** The open rig, behind its one door. */
export function useOpenRig(): RigStore | undefined {
  return useContext(OpenRig);
}

/** The open rig as it stands; empty until there is one. */
export function useRigNow(): Rig {
  const store = useOpenRig();
  return useSyncExternalStore(
    store?.subscribe ?? NEVER,
    () => store?.rig() ?? EMPTY_RIG,
    () => EMPTY_RIG,
  );
}

/** Whether the open rig takes edits now. */
export function useCanEdit(): boolean {
  const store = useOpenRig();
  return useSyncExternalStore(
    store?.subscribeLink ?? NEVER,
    () => store?.canEdit() ?? false,
    () => false,
  );
}
