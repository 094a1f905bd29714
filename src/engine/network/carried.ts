import { groupBy } from '#base/group-by.ts';
import { memoByIdentity } from '#base/memo.ts';
import type { Universe } from '../model/address.ts';
import { nameKey } from '../model/card.ts';
import type { Plant, Run, Splitter } from '../model/plant.ts';
import { networkOf } from './network.ts';
import { networkNumber } from './network-number.ts';

/** The universes that come out of each port, by its key; ports out of which none comes are not in it. More than one is a mistake. [NW4] */
export const carriedByPorts: (plant: Plant) => ReadonlyMap<string, readonly Universe[]> = memoByIdentity((plant) => {
  const sent = groupBy(plant.deliveries.values(), (delivery) => `${delivery.by} ${networkNumber(delivery)}`);
  const carried = new Map<string, readonly Universe[]>();
  for (const { port } of networkOf(plant).listeners) {
    const universes = sent.get(`${port.by} ${port.number}`)?.map(({ universe }) => universe);
    if (universes !== undefined)
      carried.set(
        port.key,
        universes.sort((a, b) => a - b),
      );
  }
  return carried;
});

/**
 * The universes that a run carries, from where it begins; of one behind splitters, those of the run they are on. Null when it begins
 * nowhere, at what is not there, or at itself: nobody knows then. [NW5]
 */
export function carriedByRun(plant: Plant, run: Run): readonly Universe[] | null {
  const passed = new Set<string>();
  let at: Run | undefined = run;
  while (at !== undefined && !passed.has(at.key)) {
    passed.add(at.key);
    const from: Run['from'] = at.from;
    if (from.kind === 'none') return null;
    if (from.kind === 'cable') return [from.universe];
    if (from.kind === 'port') return plant.ports.has(from.port) ? (carriedByPorts(plant).get(from.port) ?? []) : null;
    const splitter: Splitter | undefined = plant.splitters.find(({ id }) => id === from.splitter);
    at = splitter === undefined ? undefined : plant.runs.get(nameKey(splitter.run));
  }
  return null;
}
