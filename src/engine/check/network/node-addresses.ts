import { groupBy } from '#base/group-by.ts';
import { formatIpv4, isNeighbour, parseIpv4, parseMask } from '../../address/ipv4.ts';
import type { Delivery, NetworkNode } from '../../model/plant.ts';
import { hearersOf, type Network } from '../../network/network.ts';
import { deliveriesOf, type NetworkRule, nodeName, universesOf } from './network-rule.ts';

/** Addresses and masks that are none [AD13]. [NW17] */
export const addressUnreadable: NetworkRule = ({ network: { plant } }) =>
  plant.nodes.flatMap((node) => {
    const { address, mask } = node;
    const odd: ('address' | 'mask')[] = [];
    if (address.trim() !== '' && parseIpv4(address) === null) odd.push('address');
    if (mask.trim() !== '' && parseMask(mask) === null) odd.push('mask');
    return odd.map((field) => ({ rule: 'address-unreadable', ...nodeName(node), field, value: node[field] }) as const);
  });

/** Two devices of one address: neither can be relied on (RFC 5227). [NW18] */
export const sameNodeAddress: NetworkRule = ({ network: { plant } }) => {
  const byAddress = groupBy(plant.nodes, ({ address }) => parseIpv4(address));
  return [...byAddress].flatMap(([address, nodes]) =>
    address === null || nodes.length < 2
      ? []
      : [{ rule: 'same-node-address', address: formatIpv4(address), nodes: nodes.map(nodeName) } as const],
  );
};

/**
 * Nodes that get a universe from a known sender, where the mask of either says that the other is behind a router [AD13]. Not of sACN
 * that goes out as multicast: a group has no mask. [NW19]
 */
export const nodeOutOfReach: NetworkRule = ({ network }) => {
  const lost = new Map<
    string,
    { readonly sender: NetworkNode; readonly node: NetworkNode; readonly sent: Set<Delivery> }
  >();
  for (const delivery of deliveriesOf(network)) {
    const sender = senderOf(network, delivery);
    if (sender === undefined) continue;
    for (const { node } of hearersOf(network, delivery)) {
      if (!areApart(sender, node)) continue;
      const key = JSON.stringify([sender.id, node.id]);
      const known = lost.get(key) ?? { sender, node, sent: new Set() };
      known.sent.add(delivery);
      lost.set(key, known);
    }
  }
  return Array.from(lost.values(), ({ sender, node, sent }) => ({
    rule: 'node-out-of-reach',
    ...nodeName(node),
    sender: nodeName(sender),
    universes: universesOf(sent),
  }));
};

/** Who sends a delivery to one address after the other; undefined when nobody knows, and for a group. */
function senderOf({ nodes }: Network, { by, cast, sender }: Delivery): NetworkNode | undefined {
  const toGroup = by === 'sacn' && cast !== 'unicast' && cast !== 'broadcast';
  return toGroup ? undefined : nodes.get(sender);
}

function areApart(one: NetworkNode, other: NetworkNode): boolean {
  const [mine, theirs] = [parseIpv4(one.address), parseIpv4(other.address)];
  if (one === other || mine === null || theirs === null) return false;
  return [one, other].some(({ mask }) => {
    const ones = parseMask(mask);
    return ones !== null && !isNeighbour(mine, ones, theirs);
  });
}
