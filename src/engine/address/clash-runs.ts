import { SLOTS } from '../model/address.ts';
import type { Unit } from './unit.ts';
import { firstOf, hasClash, inOrder, lastOf, partOf, type UniverseClaims } from './universe-claims.ts';

/** A slot that more units than this claim is crowded: see [CH4]. It bounds what can be said of any universe. */
const CROWD = 64;

/** Slots `first` to `last` (1-based, both counted in) that the same `units`, two or more, claim. */
export interface ClashRun {
  readonly first: number;
  readonly last: number;
  readonly units: readonly Unit[];
}

const NO_RUNS: readonly ClashRun[] = Object.freeze([]);

/**
 * The maximal runs of slots that the same two or more units claim, by ascending slot. [CH1] Neighbouring crowded slots that
 * share a unit make one run, which names everyone in it. [CH4]
 */
export function clashRuns(claims: UniverseClaims): readonly ClashRun[] {
  return hasClash(claims) ? runsIn(inOrder(claims)) : NO_RUNS;
}

/** Cuts a universe where nothing spans the cut, and looks closely only at pieces of two claims or more. */
function runsIn({ spans, units }: UniverseClaims): readonly ClashRun[] {
  const runs: ClashRun[] = [];
  // A unit may end with one break and go on with the next: only where every unit has one claim do neighbours part.
  const apart = spans.every((span) => partOf(span) === 1) ? 0 : 1;
  let from = 0;
  while (from < spans.length) {
    const to = endOfPiece(spans, from, apart);
    if (to - from === 2 && apart === 0) runs.push(pairRun(spans, units, from));
    else if (to - from > 1) runs.push(...sweep(spans.slice(from, to), units.slice(from, to)));
    from = to;
  }
  return runs;
}

function endOfPiece(spans: readonly number[], from: number, apart: number): number {
  let reached = lastOf(spans[from] as number);
  let to = from + 1;
  for (; to < spans.length && firstOf(spans[to] as number) <= reached + apart; to++) {
    reached = Math.max(reached, lastOf(spans[to] as number));
  }
  return to;
}

function pairRun(spans: readonly number[], units: readonly Unit[], at: number): ClashRun {
  const last = Math.min(lastOf(spans[at] as number), lastOf(spans[at + 1] as number));
  const both = [units[at] as Unit, units[at + 1] as Unit];
  return { first: firstOf(spans[at + 1] as number) + 1, last: last + 1, units: both };
}

function sweep(spans: readonly number[], units: readonly Unit[]): readonly ClashRun[] {
  return new Sweep(spans, units).runs.map(({ first, last, units: set }) => ({ first, last, units: [...set] }));
}

interface OpenRun {
  first: number;
  last: number;
  units: Set<Unit>;
  crowded: boolean;
}

const INDEX_BITS = 22;
const INDEX = (1 << INDEX_BITS) - 1;
const slotAt = (event: number | undefined) => (event === undefined ? SLOTS : event >>> INDEX_BITS);

/** Goes through a universe from slot to slot at which something starts or ends; slots are 0-based here. */
class Sweep {
  readonly runs: OpenRun[] = [];
  readonly #units: readonly Unit[];
  /** Who claims the slots at hand, with how many breaks. */
  readonly #active = new Map<Unit, number>();
  #ended: Unit[] = [];
  #started: Unit[] = [];
  /** How many of the active claimed the slot before as well. */
  #stayed = 0;

  constructor(spans: readonly number[], units: readonly Unit[]) {
    this.#units = units;
    const starts = eventsOf(spans, firstOf);
    const ends = eventsOf(spans, lastOf);
    let start = 0;
    let end = 0;
    while (end < ends.length) {
      const slot = Math.min(slotAt(starts[start]), slotAt(ends[end]) + 1);
      end = this.#leave(ends, end, slot - 1);
      start = this.#enter(starts, start, slot);
      const next = Math.min(slotAt(starts[start]), slotAt(ends[end]) + 1);
      if (this.#active.size > 1) this.#note(slot, next);
    }
  }

  #leave(ends: Int32Array, from: number, slot: number): number {
    this.#ended = [];
    let at = from;
    for (; at < ends.length && slotAt(ends[at]) === slot; at++) {
      const unit = this.#units[(ends[at] as number) & INDEX] as Unit;
      const count = this.#active.get(unit) ?? 0;
      if (count > 1) this.#active.set(unit, count - 1);
      else this.#active.delete(unit);
      this.#ended.push(unit);
    }
    this.#stayed = this.#active.size;
    return at;
  }

  #enter(starts: Int32Array, from: number, slot: number): number {
    this.#started = [];
    let at = from;
    for (; at < starts.length && slotAt(starts[at]) === slot; at++) {
      const unit = this.#units[(starts[at] as number) & INDEX] as Unit;
      this.#active.set(unit, (this.#active.get(unit) ?? 0) + 1);
      this.#started.push(unit);
    }
    return at;
  }

  /** Notes that the active claim the slots from `slot` up to but without `next`. */
  #note(slot: number, next: number): void {
    const run = this.runs[this.runs.length - 1];
    const crowded = this.#active.size > CROWD;
    if (run === undefined || run.last !== slot || run.crowded !== crowded || !this.#goesOn(run)) {
      this.runs.push({ first: slot + 1, last: next, units: new Set(this.#active.keys()), crowded });
      return;
    }
    run.last = next;
    if (crowded) for (const unit of this.#started) run.units.add(unit);
  }

  #goesOn(run: OpenRun): boolean {
    if (run.crowded) return this.#stayed > 0 || this.#someoneCameBack();
    if (run.units.size !== this.#active.size) return false;
    for (const unit of this.#active.keys()) if (!run.units.has(unit)) return false;
    return true;
  }

  /** Whether a unit that ended at the slot before starts here with another break. */
  #someoneCameBack(): boolean {
    const ended = new Set(this.#ended);
    return this.#started.some((unit) => ended.has(unit));
  }
}

/** The claims by one of their ends: slot and place in the list packed into one number each, ascending. */
function eventsOf(spans: readonly number[], slotOfSpan: (span: number) => number): Int32Array {
  const events = new Int32Array(spans.length);
  for (let i = 0; i < events.length; i++) events[i] = (slotOfSpan(spans[i] as number) << INDEX_BITS) | i;
  return events.sort();
}
