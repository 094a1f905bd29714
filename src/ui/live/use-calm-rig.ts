import { useMemo, useSyncExternalStore } from 'react';
import { systemClock } from '#base/clock.ts';
import type { Rig } from '#engine/model/rig.ts';
import { calm } from './calm.ts';
import type { RigStore } from './rig-store.ts';

const CALM_MS = 300;

/** The rig, drawn anew a few times a second at most: for what looks at every unit of it. */
export function useCalmRig(store: RigStore): Rig {
  const subscribe = useMemo(() => calm(store.subscribe, CALM_MS, systemClock), [store]);
  return useSyncExternalStore(subscribe, store.rig);
}
