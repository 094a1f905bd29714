import type { OfPhases } from '../current.ts';
import type { Lines } from './least-peak.ts';
import { type FixedPart, roomFor } from './lines.ts';

/** A circuit to lay: what it draws, and the line it is on; null for one that is on none yet. */
export interface Laid {
  readonly amps: number;
  readonly line: number | null;
}

export interface Moves {
  readonly lines: Lines;
  readonly count: number;
  /** No way within the peak moves fewer. */
  readonly bound: number;
}

/** Rounding of last places that is no excess. */
const HAIR = 1e-9;

/**
 * The way to keep every line within `peak` that moves the fewest circuits, as far as `steps` go; `known` is a way that does. Circuits stand
 * largest first.
 */
export function fewestMoves(
  circuits: readonly Laid[],
  fixed: OfPhases<FixedPart>,
  { peak, known, steps }: { readonly peak: number; readonly known: Lines; readonly steps: number },
): Moves {
  const room = fixed.map((part) => roomFor(peak, part) + HAIR * (1 + peak));
  const search: Search = { circuits, room, best: known, count: movesOf(circuits, known), steps };
  for (const lines of renamings(known)) {
    const count = movesOf(circuits, lines);
    if (count < search.count && fits(circuits, lines, room)) Object.assign(search, { best: lines, count });
  }
  const home = [0, 0, 0];
  for (const { amps, line } of circuits) if (line !== null) home[line] = (home[line] ?? 0) + amps;
  const least = stillToMove(search, 0, home);
  descend(search, { lines: [], star: [0, 0, 0], home, count: 0 });
  return { lines: search.best, count: search.count, bound: search.steps > 0 ? search.count : least };
}

interface Search {
  readonly circuits: readonly Laid[];
  readonly room: readonly number[];
  best: Lines;
  count: number;
  steps: number;
}

interface Way {
  readonly lines: readonly number[];
  /** Of those that are laid. */
  readonly star: readonly number[];
  /** Of those that are laid, and of the others where they are. */
  readonly home: readonly number[];
  readonly count: number;
}

function descend(search: Search, way: Way): void {
  const at = way.lines.length;
  const circuit = search.circuits[at];
  if (circuit === undefined) {
    if (way.count < search.count) Object.assign(search, { best: way.lines, count: way.count });
    return;
  }
  if (way.count + stillToMove(search, at, way.home) >= search.count) return;
  const before = search.circuits[at - 1];
  // Circuits that are alike are laid in the order of the lines.
  const from = before?.amps === circuit.amps && before.line === circuit.line ? (way.lines[at - 1] ?? 0) : 0;
  for (const line of [0, 1, 2].sort((a, b) => Number(b === circuit.line) - Number(a === circuit.line) || a - b)) {
    if (line < from) continue;
    if (search.steps <= 0) return;
    search.steps -= 1;
    const star = added(way.star, line, circuit.amps);
    if ((star[line] ?? 0) > (search.room[line] ?? 0)) continue;
    const left = circuit.line === null ? way.home : added(way.home, circuit.line, -circuit.amps);
    const count = way.count + (line === circuit.line ? 0 : 1);
    descend(search, { lines: [...way.lines, line], star, home: added(left, line, circuit.amps), count });
  }
}

/** At least so many of those not laid yet must leave: on each line, the largest until it is within its room; and those on none. */
function stillToMove({ circuits, room }: Search, from: number, home: readonly number[]): number {
  const over = home.map((amps, line) => amps - (room[line] ?? 0));
  let count = 0;
  for (let at = from; at < circuits.length; at++) {
    const { amps, line } = circuits[at] as Laid;
    if (line === null) count += 1;
    else if ((over[line] ?? 0) > 0) {
      over[line] = (over[line] ?? 0) - amps;
      count += 1;
    }
  }
  return count;
}

const added = (amps: readonly number[], line: number, more: number): readonly number[] =>
  amps.map((each, at) => (at === line ? each + more : each));

const movesOf = (circuits: readonly Laid[], lines: Lines): number =>
  circuits.filter(({ line }, at) => line !== lines[at]).length;

function fits(circuits: readonly Laid[], lines: Lines, room: readonly number[]): boolean {
  const star = [0, 0, 0];
  for (const [at, { amps }] of circuits.entries()) star[lines[at] ?? 0] = (star[lines[at] ?? 0] ?? 0) + amps;
  return star.every((amps, line) => amps <= (room[line] ?? 0));
}

const ORDERS = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

/** The same groups of loads on lines of other names. */
const renamings = (lines: Lines): readonly Lines[] =>
  ORDERS.map((order) => lines.map((line) => order[line as 0 | 1 | 2]));
