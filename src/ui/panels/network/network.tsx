import { useEffect, useSyncExternalStore } from 'react';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { Steps } from '../steps.tsx';
import { ConventionPart } from './convention-part.tsx';
import { DevicesPart } from './devices-part.tsx';
import { UniversesPart } from './universes-part.tsx';
import { useNetwork } from './use-network.ts';

export interface NetworkProps {
  readonly store: RigStore;
  readonly rigId: string;
}

/** The network of an open rig: the convention of numbers, how universes travel, and the devices. */
export function Network({ store, rigId }: NetworkProps) {
  const view = useNetwork(store, rigId);
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  useEffect(() => {
    if (arrived) document.getElementById(window.location.hash.slice(1))?.focus();
  }, [arrived]);
  if (!arrived) return <p className="text-soft">{EMPTY_WORDS.arriving}</p>;
  return (
    <div className="flex flex-col gap-6">
      <div className="flex flex-col gap-2">
        <div className="flex flex-wrap items-baseline gap-x-5">
          <p className="text-soft">{words.summary(view.routes.length, view.network.plant.nodes.length)}</p>
          {view.frozen ? <p>{words.reader}</p> : <Steps store={store} />}
        </div>
        <ConventionPart view={view} />
      </div>
      <UniversesPart view={view} />
      <DevicesPart view={view} />
    </div>
  );
}
