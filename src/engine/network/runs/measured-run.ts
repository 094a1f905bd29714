import type { Plant, Run } from '../../model/plant.ts';
import type { ChainLink } from './run-chain.ts';

/** Unit loads that a segment of a line may have (ANSI E1.11, EIA-485: 32 receivers). */
export const MOST_LOADS = 32;

/** Metres a line may have where nobody has said: 300 m on 24 AWG, a repeater beyond (common practice). */
const USUAL_REACH = 300;

/** One thing on a line, and what has come together up to it. */
export interface Station {
  readonly link: ChainLink;
  /** Among units and splitters, counted from 1. */
  readonly place: number;
  /** Metres from what is before it; null: not known. */
  readonly cable: number | null;
  /** Metres from the beginning of the line, as far as they are known. */
  readonly metres: number;
  /** Stretches up to here of which nobody knows the length: there are more metres than `metres`. */
  readonly unknown: number;
  /** Unit loads up to here, its own counted. */
  readonly loads: number;
}

export interface MeasuredRun {
  readonly stations: readonly Station[];
  /** Of the whole line, as far as they are known. */
  readonly metres: number;
  readonly unknown: number;
  readonly loads: number;
}

/**
 * A line from its beginning to its end. Every unit is one unit load, and so is a splitter: no type says otherwise. The first stretch is the
 * lead of the run; where nobody has said that, the cable of what comes first. [RN2] [RN3]
 */
export function measuredRun(chain: readonly ChainLink[], lead: number | null): MeasuredRun {
  const stations: Station[] = [];
  let [metres, unknown] = [0, 0];
  for (const [at, link] of chain.entries()) {
    const own = link.kind === 'unit' ? link.fixture.cable : link.splitter.cable;
    const cable = at === 0 ? (lead ?? own) : own;
    metres = rounded(metres + (cable ?? 0));
    unknown += cable === null ? 1 : 0;
    stations.push({ link, place: at + 1, cable, metres, unknown, loads: at + 1 });
  }
  return { stations, metres, unknown, loads: chain.length };
}

/** To the millimetre: sums of decimal fractions are off by a hair. */
const rounded = (metres: number) => Math.round(metres * 1000) / 1000;

/** The metres a line may have, and who says so: the run, the rig as a whole, or nobody. */
export interface Reach {
  readonly metres: number;
  readonly by: 'run' | 'rig' | 'practice';
}

export function reachOf(plant: Plant, run: Pick<Run, 'reach'> | undefined): Reach {
  if (run !== undefined && run.reach !== null) return { metres: run.reach, by: 'run' };
  const { reach } = plant.setup;
  return reach === null ? { metres: USUAL_REACH, by: 'practice' } : { metres: reach, by: 'rig' };
}
