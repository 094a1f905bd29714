import type { OfPhases } from '../current.ts';
import { type FixedPart, lineAmps, roomFor } from './lines.ts';

/** Where each load lies: a line from 0 to 2. */
export type Lines = readonly number[];

export interface Peak {
  readonly lines: Lines;
  /** The current of the largest line. */
  readonly amps: number;
  /** No way of laying the loads has a lower one. */
  readonly bound: number;
}

/**
 * Lays loads, largest first, onto three lines so that the largest line current is as small as can be found within `steps`. Work is counted in
 * steps, not in time, so that the same loads get the same answer everywhere.
 */
export function leastPeak(loads: readonly number[], fixed: OfPhases<FixedPart>, steps: number): Peak {
  const search: Search = { loads, fixed, best: greedy(loads, fixed), peak: 0, steps, floor: lowerBound(loads, fixed) };
  search.peak = peakOf(loads, search.best, fixed);
  descend(search, [], [0, 0, 0]);
  const isProven = search.steps > 0 || search.peak <= search.floor;
  return { lines: search.best, amps: search.peak, bound: isProven ? search.peak : search.floor };
}

interface Search {
  readonly loads: readonly number[];
  readonly fixed: OfPhases<FixedPart>;
  /** Below which no way can come. */
  readonly floor: number;
  best: Lines;
  peak: number;
  steps: number;
}

function descend(search: Search, lines: number[], star: readonly number[]): void {
  const { loads, fixed } = search;
  const at = lines.length;
  const load = loads[at];
  if (load === undefined) {
    const peak = peakAt(star, fixed);
    if (peak >= search.peak) return;
    search.peak = peak;
    search.best = [...lines];
    return;
  }
  // Loads of one size are alike: they are laid in the order of the lines.
  const from = loads[at - 1] === load ? (lines[at - 1] ?? 0) : 0;
  for (const line of emptiestFirst(star, fixed, from)) {
    if (search.steps <= 0 || search.peak <= search.floor) return;
    search.steps -= 1;
    const now = (star[line] ?? 0) + load;
    const part = fixed[line];
    if (part === undefined || lineAmps(now, part) >= search.peak) continue;
    descend(
      search,
      [...lines, line],
      star.map((amps, each) => (each === line ? now : amps)),
    );
  }
}

/** Lines from `from` on, the one that carries least first; of lines that are alike only the first. */
function emptiestFirst(star: readonly number[], fixed: OfPhases<FixedPart>, from: number): readonly number[] {
  const isLike = (a: number, b: number) =>
    star[a] === star[b] && fixed[a]?.along === fixed[b]?.along && fixed[a]?.across === fixed[b]?.across;
  const lines = [0, 1, 2].filter(
    (line) => line >= from && (from > 0 || ![0, 1, 2].some((before) => before < line && isLike(before, line))),
  );
  const amps = lines.map((line) => lineAmps(star[line] ?? 0, fixed[line] ?? { along: 0, across: 0 }));
  return lines
    .map((line, at) => ({ line, amps: amps[at] ?? 0 }))
    .sort((a, b) => a.amps - b.amps || a.line - b.line)
    .map(({ line }) => line);
}

/** Each load, largest first, onto the line that carries least then. */
function greedy(loads: readonly number[], fixed: OfPhases<FixedPart>): Lines {
  const star = [0, 0, 0];
  return loads.map((load) => {
    const after = fixed.map((part, line) => lineAmps((star[line] ?? 0) + load, part));
    const line = after.indexOf(Math.min(...after));
    star[line] = (star[line] ?? 0) + load;
    return line;
  });
}

function peakOf(loads: readonly number[], lines: Lines, fixed: OfPhases<FixedPart>): number {
  const star = [0, 0, 0];
  for (const [at, load] of loads.entries()) star[lines[at] ?? 0] = (star[lines[at] ?? 0] ?? 0) + load;
  return peakAt(star, fixed);
}

const peakAt = (star: readonly number[], fixed: OfPhases<FixedPart>) =>
  Math.max(...fixed.map((part, line) => lineAmps(star[line] ?? 0, part)));

/**
 * What no way of laying the loads can come below: the fixed part of a line, the largest load on the line that suits it best, two of the four
 * largest on one line, and all of them spread as if they could be cut.
 */
export function lowerBound(loads: readonly number[], fixed: OfPhases<FixedPart>): number {
  const alone = Math.max(...fixed.map((part) => lineAmps(0, part)));
  const best = (amps: number) => Math.min(...fixed.map((part) => lineAmps(amps, part)));
  const largest = best(loads[0] ?? 0);
  const paired = best((loads[2] ?? 0) + (loads[3] ?? 0));
  const pair = loads.length > 3 ? paired : 0;
  return Math.max(
    alone,
    largest,
    pair,
    spread(
      loads.reduce((sum, load) => sum + load, 0),
      fixed,
      alone,
    ),
  );
}

/** The lowest peak at which all three lines together have room for `total`, from below. */
function spread(total: number, fixed: OfPhases<FixedPart>, from: number): number {
  let low = from;
  let high = from + total + Math.max(...fixed.map((part) => lineAmps(0, part)));
  // Halved until it is as near as numbers come.
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    const room = fixed.reduce((sum, part) => sum + Math.max(0, roomFor(middle, part)), 0);
    if (room < total) low = middle;
    else high = middle;
  }
  return low;
}
