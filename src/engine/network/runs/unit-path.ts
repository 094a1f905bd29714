import { slotRuns } from '../../address/claim.ts';
import type { Universe } from '../../model/address.ts';
import { nameKey } from '../../model/card.ts';
import type { Fixture } from '../../model/fixture.ts';
import { type NamedSource, namedSource } from '../../model/named-source.ts';
import { type Delivery, type Plant, type Port, plantOf, type Run, runName } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { measuredRun, type Station } from './measured-run.ts';
import { runChain } from './run-chain.ts';

/** One line on the way from a unit to where its data comes from: the unit's own, then those of the splitters before it. */
export interface PathRun {
  readonly name: string;
  /** Where the unit, or the splitter one came from, is on it; undefined when it is not on it at all. */
  readonly at: Station | undefined;
  /** How many units and splitters it has. */
  readonly of: number;
  /** Undefined while nobody has described the run. */
  readonly from: NamedSource | undefined;
}

export interface UnitPath {
  /** The universes in which it has slots, ascending, each with how it travels; null: nobody has said. */
  readonly universes: readonly { readonly universe: Universe; readonly delivery: Delivery | null }[];
  readonly runs: readonly PathRun[];
  /** The port at which the way begins, where somebody has said what it listens to. */
  readonly port: Port | undefined;
}

/** The way a unit's data comes: from its universes over node, port and splitters to its place on its run. It ends at a ring. [RN11] */
export function unitPath(rig: Rig, unit: Fixture): UnitPath {
  const plant = plantOf(rig.cards);
  const universes = [...new Set(slotRuns(rig, unit).map(({ universe }) => universe))].sort((a, b) => a - b);
  const runs: PathRun[] = [];
  const passed = new Set<string>();
  let [key, id, last]: [string, string, Run | undefined] = [nameKey(unit.run), unit.id, undefined];
  while (key !== '' && !passed.has(key)) {
    passed.add(key);
    last = plant.runs.get(key);
    const before = splitterBefore(plant, last);
    runs.push(pathRun(rig, { key, id, run: last, written: runs.length === 0 ? unit.run : key }));
    [key, id] = before === undefined ? ['', ''] : [nameKey(before.run), before.id];
  }
  return {
    universes: universes.map((universe) => ({ universe, delivery: plant.deliveries.get(universe) ?? null })),
    runs,
    port: last?.from.kind === 'port' ? plant.ports.get(last.from.port) : undefined,
  };
}

interface At {
  readonly key: string;
  readonly id: string;
  readonly run: Run | undefined;
  readonly written: string;
}

function pathRun(rig: Rig, { key, id, run, written }: At): PathRun {
  const { stations } = measuredRun(runChain(rig, key), run?.lead ?? null);
  return {
    name: run === undefined ? written.trim() : runName(run),
    at: stations.find(({ link }) => link.id === id),
    of: stations.length,
    from: run && namedSource(plantOf(rig.cards), run.from),
  };
}

function splitterBefore(plant: Plant, run: Run | undefined) {
  const from = run?.from;
  return from?.kind === 'splitter' ? plant.splitters.find(({ id }) => id === from.splitter) : undefined;
}
