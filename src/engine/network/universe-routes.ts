import { memoByIdentity } from '#base/memo.ts';
import { getRow, rowsOf } from '#base/table.ts';
import type { Universe } from '../model/address.ts';
import { type Delivery, type Plant, plantOf, type Run } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import { carriedByRun } from './carried.ts';
import { hearersOf, type Listener, networkOf } from './network.ts';

/** How a universe gets to its units. */
export interface UniverseRoute {
  readonly universe: Universe;
  readonly label: string;
  /** Whether some unit claims a slot of it. */
  readonly use: 'used' | 'unused';
  readonly delivery: Delivery | undefined;
  /** The ports that it comes out of. */
  readonly outlets: readonly Listener[];
  /** The runs that carry it, by name. */
  readonly runs: readonly Run[];
}

/** Every universe that is used, or of which the crew has said how it travels, ascending. [NW30] */
export function universeRoutes(rig: Rig, used: readonly Universe[]): readonly UniverseRoute[] {
  const plant = plantOf(rig.cards);
  const network = networkOf(plant);
  const inUse = new Set(used);
  const carriers = runsByUniverse(plant);
  return [...new Set([...used, ...delivered(rig)])]
    .sort((a, b) => a - b)
    .map((universe) => {
      const delivery = plant.deliveries.get(universe);
      return {
        universe,
        label: getRow(rig.universes, String(universe))?.label ?? '',
        use: inUse.has(universe) ? 'used' : 'unused',
        delivery,
        outlets: delivery === undefined ? [] : hearersOf(network, delivery),
        runs: carriers.get(universe) ?? [],
      };
    });
}

/** The universes with a card of their delivery, be it one yet or not. */
const delivered = (rig: Rig): readonly Universe[] =>
  [...rowsOf(rig.cards)].flatMap(({ kind, key }) => (kind === 'delivery' ? [Number(key) as Universe] : []));

/** The runs that carry each universe, by name. */
const runsByUniverse: (plant: Plant) => ReadonlyMap<Universe, readonly Run[]> = memoByIdentity((plant) => {
  const carriers = new Map<Universe, Run[]>();
  for (const run of plant.runs.values()) {
    for (const universe of carriedByRun(plant, run) ?? []) {
      carriers.set(universe, [...(carriers.get(universe) ?? []), run]);
    }
  }
  return carriers;
});

/** The runs that begin at a port itself. */
export const runsFromPort = ({ runs }: Plant, port: string): readonly Run[] =>
  [...runs.values()].filter(({ from }) => from.kind === 'port' && from.port === port);
