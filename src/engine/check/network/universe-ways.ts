import { isPortAddress } from '../../address/port-address.ts';
import { isSacnUniverse } from '../../address/sacn-universe.ts';
import { PROTOCOLS, type Protocol } from '../../model/card.ts';
import type { Delivery } from '../../model/plant.ts';
import { networkNumber } from '../../network/carried.ts';
import { hasNetwork, hearersOf } from '../../network/network.ts';
import { type NetworkQuestion, type NetworkRule, universesOf } from './network-rule.ts';

/** Universes in use that travel under a number no port listens to. A reserved number has been said already. [NW13] */
export const universeUnreached: NetworkRule = (question) =>
  PROTOCOLS.flatMap((by) => {
    const unheard = usedBy(question, by).filter(
      (delivery) => isNumbered(by, networkNumber(delivery)) && hearersOf(question.network, delivery).length === 0,
    );
    const [only] = unheard;
    if (only === undefined) return [];
    const number = unheard.length === 1 ? networkNumber(only) : null;
    return [{ rule: 'universe-unreached', by, universes: universesOf(unheard), number } as const];
  });

/** Universes in use without a delivery, once anything is said of how others travel. [NW14] */
export const universeUndelivered: NetworkRule = ({ network: { plant }, used }) => {
  const universes = hasNetwork(plant) ? used.filter((universe) => !plant.deliveries.has(universe)) : [];
  return universes.length === 0 ? [] : [{ rule: 'universe-undelivered', universes }];
};

/** Universes in use that travel by a network, and whose number there nobody has said. [NW15] */
export const deliveryUnnumbered: NetworkRule = (question) =>
  PROTOCOLS.flatMap((by) => {
    const universes = universesOf(usedBy(question, by).filter((delivery) => networkNumber(delivery) === null));
    return universes.length === 0 ? [] : [{ rule: 'delivery-unnumbered', by, universes } as const];
  });

/** Art-Net sends levels to subscribers one by one; sending them to everybody is not allowed (Art-Net 4, ArtDmx). [NW16] */
export const castUnfit: NetworkRule = ({ network: { plant } }) =>
  (['multicast', 'broadcast'] as const).flatMap((cast) => {
    const all = [...plant.deliveries.values()].filter((each) => each.by === 'art-net' && each.cast === cast);
    return all.length === 0 ? [] : [{ rule: 'cast-unfit', cast, universes: universesOf(all) } as const];
  });

const usedBy = ({ network, used }: NetworkQuestion, by: Protocol): readonly Delivery[] =>
  used.flatMap((universe) => {
    const delivery = network.plant.deliveries.get(universe);
    return delivery?.by === by ? [delivery] : [];
  });

const isNumbered = (by: Protocol, number: number | null) =>
  number !== null && (by === 'sacn' ? isSacnUniverse(number) : isPortAddress(number));
