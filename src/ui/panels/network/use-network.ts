import { useMemo, useSyncExternalStore } from 'react';
import type { Universe } from '#engine/model/address.ts';
import { plantOf } from '#engine/model/plant.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type Network, networkOf } from '#engine/network/network.ts';
import { type UniverseRoute, universeRoutes } from '#engine/network/universe-routes.ts';
import type { PlantFinding } from '#words/plant-findings.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { isOnNetworkPage } from './finding-places.ts';

/** What the page of the network shows, and who shows it. */
export interface NetworkView {
  readonly store: RigStore;
  readonly rigId: string;
  readonly rig: Rig;
  readonly network: Network;
  /** Universes in which some unit claims a slot. */
  readonly used: readonly Universe[];
  readonly routes: readonly UniverseRoute[];
  /** The findings that are dealt with here. */
  readonly findings: readonly PlantFinding[];
  /** Nothing can be written here. */
  readonly frozen: boolean;
}

/** The network of an open rig; the same as long as no card, label, use of a universe or finding changed. */
export function useNetwork(store: RigStore, rigId: string): NetworkView {
  const cards = useSyncExternalStore(store.subscribe, () => store.rig().cards);
  const labels = useSyncExternalStore(store.subscribe, () => store.rig().universes);
  const used = useSyncExternalStore(store.subscribe, () => store.occupancy().universes());
  const all = useSyncExternalStore(store.subscribe, store.findings);
  const frozen = !useSyncExternalStore(store.subscribeLink, store.canEdit);
  const findings = useMemo(() => all.filter(isOnNetworkPage), [all]);
  return useMemo(() => {
    const rig = { ...store.rig(), cards, universes: labels };
    const network = networkOf(plantOf(cards));
    return { store, rigId, rig, network, used, routes: universeRoutes(rig, used), findings, frozen };
  }, [store, rigId, cards, labels, used, findings, frozen]);
}
