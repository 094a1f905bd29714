import { SLOTS } from '../model/address.ts';
import type { Unit } from './unit.ts';
import { firstOf, hasClash, lastOf, type UniverseClaims } from './universe-claims.ts';

/** A slot that more units than this claim is crowded: see [CH4]. It bounds what can be said of any universe. */
export const CROWD = 64;

/** Slots `first` to `last` (1-based, both counted in) that the same `units`, two or more, claim. */
export interface ClashRun {
  readonly first: number;
  readonly last: number;
  readonly units: ReadonlySet<Unit>;
}

const NO_RUNS: readonly ClashRun[] = Object.freeze([]);

/**
 * The maximal runs of slots that the same two or more units claim, by ascending slot. [CH1] Neighbouring crowded slots that
 * share a unit make one run, which names everyone in it. [CH4]
 */
export function clashRuns(claims: UniverseClaims): readonly ClashRun[] {
  return hasClash(claims) ? new Sweep(claims).runs : NO_RUNS;
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

  constructor(claims: UniverseClaims) {
    this.#units = claims.units;
    const starts = eventsOf(claims, firstOf);
    const ends = eventsOf(claims, lastOf);
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
function eventsOf(claims: UniverseClaims, slotOfSpan: (span: number) => number): Int32Array {
  const events = new Int32Array(claims.spans.length);
  for (let i = 0; i < events.length; i++) events[i] = (slotOfSpan(claims.spans[i] as number) << INDEX_BITS) | i;
  return events.sort();
}
