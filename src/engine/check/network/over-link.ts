import { SLOTS } from '../../model/address.ts';
import type { Protocol } from '../../model/card.ts';
import type { Delivery, NetworkNode } from '../../model/plant.ts';
import { carriedByPorts, networkNumber } from '../../network/carried.ts';
import { dataRate, USUAL_RATE } from '../../network/data-rate.ts';
import { hearersOf, type Network } from '../../network/network.ts';
import { deliveriesOf, type NetworkRule, nodeName } from './network-rule.ts';

type Streams = Readonly<Record<Protocol, number>>;

/** More than a link carries when every universe is sent whole and at full rate [NW2] [NW3]; both ways are looked at by themselves. [NW22] */
export const overLink: NetworkRule = ({ network }) =>
  network.plant.nodes.flatMap((node) => {
    const { link } = node;
    if (link === null) return [];
    return (['sends', 'gets'] as const).flatMap((way) => {
      const streams = way === 'sends' ? sentBy(network, node) : gotBy(network, node);
      const bits = bitsOf(streams);
      if (bits <= link * 1e6) return [];
      const { sacn, 'art-net': artNet } = streams;
      return [{ rule: 'over-link', ...nodeName(node), way, sacn, artNet, bits, link } as const];
    });
  });

const bitsOf = (streams: Streams) =>
  (['sacn', 'art-net'] as const).reduce((sum, carrier) => {
    const stream = { carrier, universes: streams[carrier], slots: SLOTS, rate: USUAL_RATE };
    return sum + dataRate(stream).bitsPerSecond;
  }, 0);

/** A group is sent to once; what goes to addresses, once to each node that listens, and at least once. */
function sentBy(network: Network, node: NetworkNode): Streams {
  const streams = { sacn: 0, 'art-net': 0 };
  for (const delivery of deliveriesOf(network)) {
    const { by, sender } = delivery;
    if (sender === node.id && by !== 'cable' && networkNumber(delivery) !== null)
      streams[by] += copiesOf(network, delivery);
  }
  return streams;
}

function copiesOf(network: Network, delivery: Delivery): number {
  if (delivery.by === 'sacn' && delivery.cast !== 'unicast') return 1;
  return Math.max(1, new Set(hearersOf(network, delivery).map(({ node }) => node)).size);
}

/** A universe comes once, to however many ports of the node. */
function gotBy({ plant, listeners }: Network, node: NetworkNode): Streams {
  const carried = carriedByPorts(plant);
  const got = { sacn: new Set<number>(), 'art-net': new Set<number>() };
  for (const { node: at, port } of listeners) {
    if (at !== node || port.by === null) continue;
    for (const universe of carried.get(port.key) ?? []) got[port.by].add(universe);
  }
  return { sacn: got.sacn.size, 'art-net': got['art-net'].size };
}
