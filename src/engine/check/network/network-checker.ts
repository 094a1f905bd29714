import type { Universe } from '../../model/address.ts';
import type { CardKind } from '../../model/card.ts';
import { hasNetwork, networkOf } from '../../network/network.ts';
import { makeFinding } from '../make-finding.ts';
import type { CheckStep, PartChecker } from '../part-checker.ts';
import { type OpenDelta, StandingFindings } from '../standing-findings.ts';
import type { NetworkRule } from './network-rule.ts';
import { addressUnreadable, nodeOutOfReach, sameNodeAddress } from './node-addresses.ts';
import { mixedSubNets, portBeyond } from './node-ports.ts';
import { numberReserved, portAddressZero } from './number-reserved.ts';
import { overLink } from './over-link.ts';
import { portFedTwice } from './port-fed-twice.ts';
import { castUnfit, deliveryUnnumbered, universeUndelivered, universeUnreached } from './universe-ways.ts';

const RULES: readonly NetworkRule[] = [
  portFedTwice,
  numberReserved,
  sameNodeAddress,
  mixedSubNets,
  universeUnreached,
  universeUndelivered,
  deliveryUnnumbered,
  addressUnreadable,
  nodeOutOfReach,
  overLink,
  portBeyond,
  castUnfit,
  portAddressZero,
];

const KINDS: readonly CardKind[] = ['node', 'port', 'delivery'];
const NONE: readonly Universe[] = Object.freeze([]);

/** What is wrong with the network. A step looks at all of it when a card of it changed, or which universes are in use; else at nothing. */
export class NetworkChecker implements PartChecker {
  readonly #standing = new StandingFindings<'network'>();
  #used: readonly Universe[] = NONE;

  update({ plant, replanted, index }: CheckStep, delta: OpenDelta): void {
    const used = hasNetwork(plant) ? index.universes() : NONE;
    const inUse = sameNumbers(used, this.#used);
    this.#used = used;
    if (inUse && !KINDS.some((kind) => replanted.has(kind))) return;
    const question = { network: networkOf(plant), used };
    const found = RULES.flatMap((rule) => rule(question)).map((trouble) => makeFinding(trouble, []));
    this.#standing.settle('network', found, delta);
  }
}

const sameNumbers = (a: readonly number[], b: readonly number[]) =>
  a === b || (a.length === b.length && a.every((each, at) => each === b[at]));
