import { carriedByPorts } from '../../network/carried.ts';
import { type NetworkRule, portName } from './network-rule.ts';

/** Two universes that come out of one port: what is behind it would get a mixture of both. [NW10] */
export const portFedTwice: NetworkRule = ({ network }) => {
  const carried = carriedByPorts(network.plant);
  return network.listeners.flatMap((listener) => {
    const { key, by, number } = listener.port;
    const universes = carried.get(key) ?? [];
    if (universes.length < 2 || by === null || number === null) return [];
    return [{ rule: 'port-fed-twice', ...portName(listener), by, number, universes }];
  });
};
