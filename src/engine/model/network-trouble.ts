import type { Universe } from './address.ts';
import type { Protocol } from './card.ts';

/** A port as a finding names it. `node` is the id of its node, `name` what people call that. */
export interface PortName {
  readonly node: string;
  readonly name: string;
  readonly index: number;
}

/** A node as a finding names it. */
export interface NodeName {
  readonly node: string;
  readonly name: string;
}

/** What a rule found in the network. Universes are ascending, nodes and ports in the order of their names. */
export type NetworkTrouble =
  /** Universes that come out of one port together. */
  | (PortName & {
      readonly rule: 'port-fed-twice';
      readonly by: Protocol;
      readonly number: number;
      readonly universes: readonly Universe[];
    })
  /** A number that carries no levels: of deliveries, of ports, or of both. */
  | ({ readonly rule: 'number-reserved'; readonly by: Protocol; readonly number: number } & NumberUsers)
  | { readonly rule: 'same-node-address'; readonly address: string; readonly nodes: readonly NodeName[] }
  /** Ports `first` to `last` are of one reply, and would need more than one Net and Sub-Net (`0:1`). */
  | (NodeName & {
      readonly rule: 'mixed-sub-nets';
      readonly first: number;
      readonly last: number;
      readonly subNets: readonly string[];
    })
  /** Universes in use that travel by a network, and no port listens to them. `number`: theirs, where it is one universe. */
  | {
      readonly rule: 'universe-unreached';
      readonly by: Protocol;
      readonly universes: readonly Universe[];
      readonly number: number | null;
    }
  /** Universes in use of which nobody has said how they travel. */
  | { readonly rule: 'universe-undelivered'; readonly universes: readonly Universe[] }
  /** Universes in use that travel by a network without their number there. */
  | { readonly rule: 'delivery-unnumbered'; readonly by: Protocol; readonly universes: readonly Universe[] }
  | (NodeName & { readonly rule: 'address-unreadable'; readonly field: 'address' | 'mask'; readonly value: string })
  /** What a sender sends to a node cannot get there without a router. */
  | (NodeName & {
      readonly rule: 'node-out-of-reach';
      readonly sender: NodeName;
      readonly universes: readonly Universe[];
    })
  /** More than a link carries. `sacn`, `artNet`: streams of each; `bits`: of all of them in a second; `link`: Mbit/s. */
  | (NodeName & {
      readonly rule: 'over-link';
      readonly way: 'sends' | 'gets';
      readonly sacn: number;
      readonly artNet: number;
      readonly bits: number;
      readonly link: number;
    })
  /** A port is set that the node does not have. */
  | (PortName & { readonly rule: 'port-beyond'; readonly ports: number })
  /** Art-Net sends levels to those who subscribe, one by one. */
  | {
      readonly rule: 'cast-unfit';
      readonly cast: 'multicast' | 'broadcast';
      readonly universes: readonly Universe[];
    }
  | ({ readonly rule: 'port-address-zero' } & NumberUsers);

export interface NumberUsers {
  readonly universes: readonly Universe[];
  readonly ports: readonly PortName[];
}

export type NetworkRule = NetworkTrouble['rule'];

export const NETWORK_RULES = [
  'port-fed-twice',
  'number-reserved',
  'same-node-address',
  'mixed-sub-nets',
  'universe-unreached',
  'universe-undelivered',
  'delivery-unnumbered',
  'address-unreadable',
  'node-out-of-reach',
  'over-link',
  'port-beyond',
  'cast-unfit',
  'port-address-zero',
] as const satisfies readonly NetworkRule[];
