import { groupBy } from '#base/group-by.ts';
import { isPortAddress, portAddressParts } from '../../address/port-address.ts';
import type { NetworkNode } from '../../model/plant.ts';
import type { Listener } from '../../network/network.ts';
import { type NetworkRule, nodeName, portName } from './network-rule.ts';

/** A port that is set though its node has fewer: nothing comes out of it. [NW20] */
export const portBeyond: NetworkRule = ({ network: { beyond } }) =>
  beyond.map((listener) => ({ rule: 'port-beyond', ...portName(listener), ports: listener.node.ports }));

/** Ports of one reply share Net and Sub-Net (Art-Net 4, ArtPollReply). [NW21] */
export const mixedSubNets: NetworkRule = ({ network: { plant, listeners } }) => {
  const byNode = groupBy(listeners, ({ node }) => node.id);
  return plant.nodes.flatMap((node) => {
    const { together } = node;
    if (together === null || together < 2) return [];
    const replies = groupBy(byNode.get(node.id) ?? [], ({ port }) => Math.ceil(port.index / together));
    return [...replies].flatMap(([reply, ports]) => {
      const subNets = subNetsOf(ports);
      return subNets.length < 2
        ? []
        : [{ rule: 'mixed-sub-nets', ...portsOf(node, reply, together), subNets } as const];
    });
  });
};

const portsOf = (node: NetworkNode, reply: number, together: number) => ({
  ...nodeName(node),
  first: (reply - 1) * together + 1,
  last: reply * together,
});

/** `0:1` for each Net and Sub-Net that some ports listen to, ascending. */
function subNetsOf(ports: readonly Listener[]): readonly string[] {
  const addresses = ports.flatMap(({ port: { by, number } }) =>
    by === 'art-net' && number !== null && isPortAddress(number) ? [number] : [],
  );
  const sorted = addresses.sort((a, b) => a - b).map(portAddressParts);
  return [...new Set(sorted.map(({ net, subNet }) => `${net}:${subNet}`))];
}
