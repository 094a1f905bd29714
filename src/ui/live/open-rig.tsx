import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { useMe } from '../kit/data/use-me.ts';
import { useRig } from '../kit/data/use-rigs.ts';
import { connectRig } from './connect-rig.ts';
import type { SaveStatus } from './link.ts';
import { MyName } from './my-name.ts';
import type { RigStore } from './rig-store.ts';
import { useLibraryNews } from './use-library-news.ts';

const Opened = createContext<RigStore | undefined>(undefined);
const Summary = createContext<RigSummary | undefined>(undefined);

export interface OpenRigProps {
  readonly rigId: string;
  readonly children: ReactNode;
}

/**
 * Opens the rig for every page within it, and keeps it open while one moves between them: an import made on one page is
 * undone on another.
 */
export function OpenRig({ rigId, children }: OpenRigProps) {
  const me = useMe().value?.user;
  const user = me?.id;
  const summary = useRig(rigId).value;
  const { role, crewId } = summary ?? {};
  const known = role === undefined ? undefined : role === 'reader' ? 'reader' : 'writer';
  const [store, setStore] = useState<RigStore>();
  useEffect(() => {
    if (user === undefined || known === undefined) return;
    const opened = connectRig(user, rigId, known);
    setStore(opened);
    return () => {
      setStore(undefined);
      opened.close();
    };
  }, [user, rigId, known]);
  useLibraryNews(store, crewId);
  return (
    <Summary value={summary}>
      <MyName value={me?.name ?? ''}>
        <Opened value={store}>{children}</Opened>
      </MyName>
    </Summary>
  );
}

/** The open rig, behind its one door; undefined until it is open. */
export function useOpenRig(): RigStore | undefined {
  return useContext(Opened);
}

const NEVER = () => () => undefined;

/** The crew whose rig is open; undefined until it is known. */
export function useRigCrew(): string | undefined {
  return useContext(Summary)?.crewId;
}

/** What the open rig is and whose; undefined until it is known. */
export function useRigSummary(): RigSummary | undefined {
  return useContext(Summary);
}

/** The open rig as it stands; empty until there is one. */
export function useRigNow(): Rig {
  const store = useOpenRig();
  return useSyncExternalStore(store?.subscribe ?? NEVER, () => store?.rig() ?? EMPTY_RIG);
}

/** Whether the open rig takes edits now. */
export function useCanEdit(): boolean {
  const store = useOpenRig();
  return useSyncExternalStore(store?.subscribeLink ?? NEVER, () => store?.canEdit() ?? false);
}

/** Where the edits made here stand; undefined until the rig is open. */
export function useSaveStatus(): SaveStatus | undefined {
  const store = useOpenRig();
  return useSyncExternalStore(store?.subscribeLink ?? NEVER, () => store?.status());
}
