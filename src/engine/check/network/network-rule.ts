import type { Universe } from '../../model/address.ts';
import type { NetworkTrouble, NodeName, PortName } from '../../model/network-trouble.ts';
import type { Delivery, NetworkNode } from '../../model/plant.ts';
import type { Listener, Network } from '../../network/network.ts';

/** What a rule of the network is asked of. */
export interface NetworkQuestion {
  readonly network: Network;
  /** Universes in which some unit claims a slot, ascending. */
  readonly used: readonly Universe[];
}

/** What is wrong by one rule; the order of cards must not matter. */
export type NetworkRule = (question: NetworkQuestion) => readonly NetworkTrouble[];

export const nodeName = ({ id, name }: NetworkNode): NodeName => ({ node: id, name });

export const portName = ({ node, port }: Listener): PortName => ({ ...nodeName(node), index: port.index });

/** The universes of some deliveries, ascending. */
export const universesOf = (deliveries: Iterable<Delivery>): readonly Universe[] =>
  Array.from(deliveries, ({ universe }) => universe).sort((a, b) => a - b);

/** Every delivery, by universe. */
export const deliveriesOf = ({ plant }: Network): readonly Delivery[] =>
  [...plant.deliveries.values()].sort((a, b) => a.universe - b.universe);
