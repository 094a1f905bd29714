import { isPortAddress } from '../../address/port-address.ts';
import { isSacnUniverse } from '../../address/sacn-universe.ts';
import { PROTOCOLS, type Protocol } from '../../model/card.ts';
import type { NumberUsers } from '../../model/network-trouble.ts';
import { networkNumber } from '../../network/carried.ts';
import { deliveriesOf, type NetworkQuestion, type NetworkRule, portName, universesOf } from './network-rule.ts';

/** Numbers that no universe can travel by: sACN 0 and 64000 to 65535 (ANSI E1.31), Port-Addresses above 32767 (Art-Net 4). [NW11] */
export const numberReserved: NetworkRule = (question) =>
  PROTOCOLS.flatMap((by) =>
    numbersOf(question, by)
      .filter((number) => (by === 'sacn' ? !isSacnUniverse(number) : !isPortAddress(number)))
      .map((number) => ({ rule: 'number-reserved', by, number, ...usersOf(question, by, number) }) as const),
  );

/** Port-Address 0 is legal in Art-Net 4; no sACN number is the same as it, and a later edition is said to advise against it. [NW12] */
export const portAddressZero: NetworkRule = (question) => {
  const users = usersOf(question, 'art-net', 0);
  return users.universes.length + users.ports.length === 0 ? [] : [{ rule: 'port-address-zero', ...users }];
};

/** The numbers that deliveries and ports use of a protocol, ascending. */
function numbersOf({ network }: NetworkQuestion, by: Protocol): readonly number[] {
  const sent = deliveriesOf(network).flatMap((each) => (each.by === by ? (networkNumber(each) ?? []) : []));
  const heard = network.listeners.flatMap(({ port }) => (port.by === by ? (port.number ?? []) : []));
  return [...new Set([...sent, ...heard])].sort((a, b) => a - b);
}

const usersOf = ({ network }: NetworkQuestion, by: Protocol, number: number): NumberUsers => ({
  universes: universesOf(deliveriesOf(network).filter((each) => each.by === by && networkNumber(each) === number)),
  ports: network.listeners.filter(({ port }) => port.by === by && port.number === number).map(portName),
});
