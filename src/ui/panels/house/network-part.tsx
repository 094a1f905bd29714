import { useMemo, useSyncExternalStore } from 'react';
import { plantOf } from '#engine/model/plant.ts';
import { universeRoutes } from '#engine/network/universe-routes.ts';
import { nodeText, routeText, HOUSE_WORDS as words } from '#words/house.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import type { CardScene } from '../../plant/card-list.tsx';
import { Part } from '../part.tsx';
import { rigPath } from '../rig/rig-address.ts';

export interface NetworkPartProps {
  readonly scene: CardScene;
  readonly rigId: string;
}

/** The devices of the network and how each universe travels, to be read; they are written on the page of the network. */
export function NetworkPart({ scene: { store, rig }, rigId }: NetworkPartProps) {
  const used = useSyncExternalStore(store.subscribe, () => store.occupancy().universes());
  const routes = useMemo(() => universeRoutes(rig, used), [rig, used]);
  const { nodes } = plantOf(rig.cards);
  return (
    <Part
      anchor="network"
      title={words.parts.network}
      about={words.networkAbout}
      actions={
        <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'network')}>
          {words.toNetwork}
        </StayLink>
      }
    >
      {nodes.length + routes.length === 0 ? <p className="pt-2">{words.noNetwork}</p> : null}
      <div className="grid grid-cols-2 gap-x-8 gap-y-3 pt-2 max-sm:grid-cols-1">
        <ul>
          {nodes.map((node) => (
            <li key={node.id} className="border-b border-rule py-1 [overflow-wrap:anywhere]">
              <b className="font-medium">{node.name}</b> {nodeText(node)}
            </li>
          ))}
        </ul>
        <ul>
          {routes.map((route) => (
            <li key={route.universe} className="border-b border-rule py-1 [overflow-wrap:anywhere]">
              <b className="font-medium tabular-nums">{route.universe}</b> {routeText(route)}
            </li>
          ))}
        </ul>
      </div>
    </Part>
  );
}
