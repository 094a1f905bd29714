import { groupBy } from '#base/group-by.ts';
import { memoByIdentity } from '#base/memo.ts';
import type { Delivery, NetworkNode, Plant, Port } from '../model/plant.ts';
import { networkNumber } from './carried.ts';

/** A port that listens to a number, and the node it is of. */
export interface Listener {
  readonly node: NetworkNode;
  readonly port: Port;
}

/** The network of a plant, as far as it is there: nodes in the order of their names, the ports of each by number. */
export interface Network {
  readonly plant: Plant;
  readonly nodes: ReadonlyMap<string, NetworkNode>;
  /** Ports that listen to something. */
  readonly listeners: readonly Listener[];
  /** Ports that are set, but above the number of ports that their node has. They listen to nothing. */
  readonly beyond: readonly Listener[];
  /** Who listens, by protocol and number. */
  readonly hearing: ReadonlyMap<string, readonly Listener[]>;
}

/** Any plant at all has a network. A port of a node that is gone is not there; of a node that nobody counted the ports of, all are. */
export const networkOf: (plant: Plant) => Network = memoByIdentity((plant) => {
  const ports = groupBy(plant.ports.values(), ({ node }) => node);
  const set = plant.nodes.flatMap((node) =>
    (ports.get(node.id) ?? [])
      .filter(({ by, number }) => by !== null && number !== null)
      .sort((a, b) => a.index - b.index)
      .map((port) => ({ node, port })),
  );
  const isThere = ({ node, port }: Listener) => node.ports === 0 || port.index <= node.ports;
  const listeners = set.filter(isThere);
  return Object.freeze({
    plant,
    nodes: new Map(plant.nodes.map((node) => [node.id, node])),
    listeners,
    beyond: set.filter((listener) => !isThere(listener)),
    hearing: groupBy(listeners, ({ port }) => `${port.by} ${port.number}`),
  });
});

/** The ports that a delivery comes out of. [NW4] */
export function hearersOf({ hearing }: Network, delivery: Delivery): readonly Listener[] {
  const number = networkNumber(delivery);
  return number === null ? [] : (hearing.get(`${delivery.by} ${number}`) ?? []);
}

/** Whether the crew has said anything of a network. */
export const hasNetwork = ({ nodes, ports, deliveries }: Plant): boolean =>
  nodes.length + ports.size + deliveries.size > 0;
