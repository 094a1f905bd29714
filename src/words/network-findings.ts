import { unreachable } from '#base/unreachable.ts';
import { formatPortAddress, isPortAddress } from '#engine/address/port-address.ts';
import { SLOTS } from '#engine/model/address.ts';
import type { Protocol } from '#engine/model/card.ts';
import type { Finding } from '#engine/model/finding.ts';
import {
  NETWORK_RULES,
  type NetworkRule,
  type NetworkTrouble,
  type NumberUsers,
  type PortName,
} from '#engine/model/network-trouble.ts';
import { USUAL_RATE, universesOnLink } from '#engine/network/data-rate.ts';
import { listed, stretchesOf } from './listed.ts';
import { counted } from './screens.ts';

/** What each rule of the network is called in a list of findings. */
export const NETWORK_RULE_TITLES: Readonly<Record<NetworkRule, string>> = {
  'port-fed-twice': 'Port fed twice',
  'number-reserved': 'Number reserved',
  'same-node-address': 'Two nodes, one address',
  'mixed-sub-nets': 'Ports of one reply apart',
  'universe-unreached': 'No port listens',
  'universe-undelivered': 'No way said',
  'delivery-unnumbered': 'No network number',
  'address-unreadable': 'No network address',
  'node-out-of-reach': 'Node out of reach',
  'over-link': 'More than the link carries',
  'port-beyond': 'No such port',
  'cast-unfit': 'Not sent so by Art-Net',
  'port-address-zero': 'Port-Address 0',
};

export type NetworkFinding = Extract<Finding, NetworkTrouble>;

export const isNetworkFinding = (finding: Finding): finding is NetworkFinding =>
  (NETWORK_RULES as readonly string[]).includes(finding.rule);

export const PROTOCOL_WORDS: Readonly<Record<Protocol, string>> = { sacn: 'sACN', 'art-net': 'Art-Net' };

/** A finding of the network in full: what is so, and what to do next. */
export function networkSentence(finding: NetworkFinding): string {
  switch (finding.rule) {
    case 'port-fed-twice':
      return `${universeWords(finding.universes)} ${finding.universes.length === 2 ? 'both' : 'all'} come out of ${portWords(finding)}, for they travel as ${numberWords(finding.by, finding.number)}. Give each a number of its own`;
    case 'number-reserved':
      return `${capital(usersWords(finding))} ${usersVerb(finding)} ${numberWords(finding.by, finding.number)}, which carries no levels. ${RANGE_WORDS[finding.by]}`;
    case 'same-node-address':
      return `${listed(finding.nodes.map(({ name }) => name))} have one network address, ${finding.address}. Give each its own`;
    case 'mixed-sub-nets':
      return `Ports ${finding.first} to ${finding.last} of ${finding.name} are of one reply and share Net and Sub-Net, but they are set to ${listed(finding.subNets)}. Set them to one, or move a universe to ports of another reply`;
    case 'universe-unreached':
      return unreachedSentence(finding);
    case 'universe-undelivered':
      return `${universeWords(finding.universes)} ${isAre(finding.universes)} in use, and nobody has said how ${itThey(finding.universes)}. Say so in the network, or fill the deliveries in`;
    case 'delivery-unnumbered':
      return `${universeWords(finding.universes)} ${travels(finding.universes)} by ${PROTOCOL_WORDS[finding.by]} without a number there. Give ${finding.universes.length === 1 ? 'it one' : 'each one'}`;
    case 'address-unreadable':
      return finding.field === 'address'
        ? `“${finding.value}” is no network address of ${finding.name}. Write four numbers of 0 to 255, such as 2.0.0.1`
        : `“${finding.value}” is no network mask of ${finding.name}. Write one such as 255.0.0.0 or /8`;
    case 'node-out-of-reach':
      return `${finding.name} is out of reach of ${finding.sender.name} by their addresses and masks, which sends it ${universeWords(finding.universes, 'inside')}. Correct an address or a mask, or see that a router is between them`;
    case 'over-link':
      return overLinkSentence(finding);
    case 'port-beyond':
      return `${capital(portWords(finding))} is set, but it has ${counted(finding.ports, 'port')}: nothing comes out there. Use another port, or correct how many there are`;
    case 'cast-unfit':
      return `${universeWords(finding.universes)} ${travels(finding.universes)} by Art-Net as ${finding.cast}, but Art-Net sends levels to those who subscribe, one by one. Choose unicast`;
    case 'port-address-zero':
      return `${capital(usersWords(finding))} ${usersVerb(finding)} Port-Address ${numberOf('art-net', 0)}. Art-Net allows it, but sACN has no universe 0, and some devices do without it. Use it only if you mean it`;
    default:
      return unreachable(finding);
  }
}

const RANGE_WORDS: Readonly<Record<Protocol, string>> = {
  sacn: 'Take a number of 1 to 63999',
  'art-net': 'Take a Port-Address up to 127:15:15',
};

function unreachedSentence({ by, universes, number }: Extract<NetworkFinding, { rule: 'universe-unreached' }>): string {
  if (number !== null) {
    return `${universeWords(universes)} travels as ${numberWords(by, number)}, and no port listens to that. Set a port to it, unless the units take it from the network themselves`;
  }
  return `${universeWords(universes)} travel by ${PROTOCOL_WORDS[by]}, and no port listens to their numbers. Set ports to them, unless the units take them from the network themselves`;
}

function overLinkSentence(finding: Extract<NetworkFinding, { rule: 'over-link' }>): string {
  const { name, way, sacn, artNet, bits, link } = finding;
  const parts = [sacn > 0 ? `${sacn} of sACN` : '', artNet > 0 ? `${artNet} of Art-Net` : ''].filter(
    (part) => part !== '',
  );
  const only = sacn === 0 ? 'art-net' : 'sacn';
  const most = universesOnLink(link * 1e6, { carrier: only, slots: SLOTS, rate: USUAL_RATE });
  const atMost = sacn > 0 && artNet > 0 ? '' : `, enough for ${most} at the very most`;
  return `${name} ${way === 'sends' ? 'would send' : 'would get'} ${counted(sacn + artNet, 'universe')} (${parts.join(', ')}): ${mega(bits)} Mbit/s whole and at ${USUAL_RATE} Hz. Its link has ${link} Mbit/s${atMost}. Share them out, or correct the link`;
}

const mega = (bits: number) => (bits / 1e6).toFixed(bits < 1e7 ? 2 : 1);

/** `sACN 3`, `Art-Net 0:0:3 (0x0003)`. */
export const numberWords = (by: Protocol, number: number): string => `${PROTOCOL_WORDS[by]} ${numberOf(by, number)}`;

const numberOf = (by: Protocol, number: number) =>
  by === 'art-net' && isPortAddress(number) ? formatPortAddress(number) : String(number);

/** `port 3 of Beam`. */
const portWords = ({ name, index }: PortName) => `port ${index} of ${name}`;

function usersWords({ universes, ports }: NumberUsers): string {
  const sent = universes.length === 0 ? [] : [universeWords(universes, 'inside')];
  const heard = ports.slice(0, NAMED).map(portWords);
  const rest = ports.length - heard.length;
  return listed([...sent, ...heard, ...(rest > 0 ? [`${rest} more ports`] : [])]);
}

const usersVerb = ({ universes, ports }: NumberUsers) => (universes.length + ports.length === 1 ? 'has' : 'have');

/** Names before the rest are counted. */
const NAMED = 8;

/** `Universe 3`, `Universes 1–4, 7`; so many ranges, and the rest counted. */
function universeWords(universes: readonly number[], where: 'first' | 'inside' = 'first'): string {
  const word = universes.length === 1 ? 'universe' : 'universes';
  const ranges = stretchesOf(universes);
  const named = ranges.slice(0, NAMED);
  const rest = ranges.slice(NAMED).reduce((sum, [first, last]) => sum + last - first + 1, 0);
  const text = named.map(([first, last]) =>
    first === last ? first : `${first}${last === first + 1 ? ', ' : '–'}${last}`,
  );
  return `${where === 'first' ? capital(word) : word} ${text.join(', ')}${rest === 0 ? '' : ` and ${rest} more`}`;
}

const isAre = ({ length }: readonly number[]) => (length === 1 ? 'is' : 'are');
const travels = ({ length }: readonly number[]) => (length === 1 ? 'travels' : 'travel');
const itThey = ({ length }: readonly number[]) => (length === 1 ? 'it travels' : 'they travel');
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
