import type { Universe } from '../../model/address.ts';
import type { Finding } from '../../model/finding.ts';
import { type NamedSource, namedSource } from '../../model/named-source.ts';
import { compareNatural } from '../../model/natural-order.ts';
import { type Plant, plantOf, type Run, runName } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { carriedByRun } from '../carried.ts';
import { type MeasuredRun, measuredRun, type Reach, reachOf } from './measured-run.ts';
import { runChain, unitsByRun } from './run-chain.ts';

/** A data line with what is on it. */
export interface RunLine {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  /** Undefined while nobody has described it: units only name it. */
  readonly run: Run | undefined;
  readonly from: NamedSource;
  /** Null: not known. */
  readonly carried: readonly Universe[] | null;
  readonly line: MeasuredRun;
  /** How many of what is on it are units. */
  readonly units: number;
  readonly reach: Reach;
}

/** Every run of a rig in natural order of names, those that units name only among them. [RN18] */
export function runList(rig: Rig): readonly RunLine[] {
  const plant = plantOf(rig.cards);
  const keys = new Set([...plant.runs.keys(), ...unitsByRun(rig.fixtures).keys()]);
  const lines = [...keys].map((key) => runLine(rig, plant, key));
  return lines.sort((a, b) => compareNatural(a.name, b.name) || (a.key < b.key ? -1 : 1));
}

function runLine(rig: Rig, plant: Plant, key: string): RunLine {
  const run = plant.runs.get(key);
  const units = unitsByRun(rig.fixtures).get(key) ?? [];
  const written = units.map((fixture) => fixture.run.trim()).sort()[0];
  return {
    key,
    name: run === undefined ? (written ?? key) : runName(run),
    run,
    from: namedSource(plant, run?.from ?? { kind: 'none' }),
    carried: run === undefined ? null : carriedByRun(plant, run),
    line: measuredRun(runChain(rig, key), run?.lead ?? null),
    units: units.length,
    reach: reachOf(plant, run),
  };
}

/** The names of the runs that a finding speaks of. */
export function runsOfFinding(finding: Finding): readonly string[] {
  if (finding.rule === 'run-ring' || finding.rule === 'run-source-shared') return finding.lines;
  if (finding.rule === 'splitter-loose' || !('line' in finding) || typeof finding.line === 'number') return [];
  return [finding.line];
}
