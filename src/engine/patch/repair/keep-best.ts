import { heaviestApart, type Piece } from './heaviest-apart.ts';
import { type Span, TakenSpans } from './taken-spans.ts';

/** What stays as a whole or not at all: apart from itself, its spans ascending. */
export interface Candidate {
  /** Above 0. */
  readonly weight: number;
  readonly spans: readonly Span[];
}

export interface Kept {
  /** Of each candidate, whether it stays. */
  readonly kept: readonly boolean[];
  /** Whether nothing heavier can stay; only candidates of several spans, in great numbers, leave that open. */
  readonly isProven: boolean;
}

/**
 * The heaviest set of candidates no two of which share a slot: weighted interval scheduling, group by group of those that
 * hang together. Where candidates of several spans do, by branch and bound over these, within `steps`. [PL24]
 */
export function keepBest(candidates: readonly Candidate[], steps: number): Kept {
  const kept = candidates.map(() => false);
  const budget = { steps };
  for (const group of groupsOf(candidates)) {
    const search = new Search(candidates, group, budget);
    for (const at of search.best) kept[at] = true;
  }
  return { kept, isProven: budget.steps > 0 };
}

/** The candidates, by their places in the list, in groups that share no slots with each other. */
function groupsOf(candidates: readonly Candidate[]): readonly (readonly number[])[] {
  const parent = candidates.map((_, at) => at);
  const rootOf = (at: number): number => {
    let root = at;
    while (parent[root] !== root) {
      parent[root] = parent[parent[root] as number] as number;
      root = parent[root] as number;
    }
    return root;
  };
  const spans = candidates.flatMap(({ spans: own }, at) => own.map(({ first, last }) => ({ first, last, at })));
  spans.sort((a, b) => a.first - b.first);
  let reached = 0;
  let before = -1;
  for (const { first, last, at } of spans) {
    if (first <= reached) parent[rootOf(at)] = rootOf(before);
    if (last > reached) {
      reached = last;
      before = at;
    }
  }
  const groups = new Map<number, number[]>();
  for (const at of candidates.keys()) {
    const root = rootOf(at);
    const group = groups.get(root);
    if (group === undefined) groups.set(root, [at]);
    else group.push(at);
  }
  return [...groups.values()];
}

/** One group. A candidate of several spans first counts for its longest one alone: what that gives is never too little. */
class Search {
  best: readonly number[] = [];
  #bestWeight = -1;
  readonly #candidates: readonly Candidate[];
  readonly #budget: { steps: number };

  constructor(candidates: readonly Candidate[], group: readonly number[], budget: { steps: number }) {
    this.#candidates = candidates;
    this.#budget = budget;
    this.#look(group, []);
  }

  /** Looks for the best set that holds all of `inside`, and beside them only some of `open`, which are apart from those. */
  #look(open: readonly number[], inside: readonly number[]): void {
    this.#budget.steps -= open.length * 4;
    const chosen = [...inside, ...heaviestApart(open.map((at) => this.#pieceOf(at)))];
    if (this.#weightOf(chosen) <= this.#bestWeight) return;
    const torn = this.#torn(chosen);
    this.#offer(torn.size === 0 ? chosen : this.#filledUp(chosen, torn, open));
    if (torn.size === 0 || this.#budget.steps <= 0) return;
    const split = [...torn].reduce((one, at) => (this.#weightAt(at) > this.#weightAt(one) ? at : one));
    const others = open.filter((at) => at !== split);
    this.#look(
      others.filter((at) => !this.#meet(at, split)),
      [...inside, split],
    );
    this.#look(others, inside);
  }

  #offer(set: readonly number[]): void {
    const weight = this.#weightOf(set);
    if (weight <= this.#bestWeight) return;
    this.best = set;
    this.#bestWeight = weight;
  }

  /** What is left of the chosen without the torn, and of the others as many as find a place, the dearest first. */
  #filledUp(chosen: readonly number[], torn: ReadonlySet<number>, open: readonly number[]): readonly number[] {
    const set = chosen.filter((at) => !torn.has(at));
    const taken = new TakenSpans(set.flatMap((at) => this.#spansOf(at)));
    const inSet = new Set(set);
    const rest = open.filter((at) => !inSet.has(at)).sort((a, b) => this.#weightAt(b) - this.#weightAt(a) || a - b);
    this.#budget.steps -= rest.length * 4;
    for (const at of rest) if (taken.add(this.#spansOf(at))) set.push(at);
    return set;
  }

  #pieceOf(at: number): Piece {
    const { spans, weight } = this.#candidates[at] as Candidate;
    const longest = spans.reduce((one, span) => (span.last - span.first > one.last - one.first ? span : one));
    return { first: longest.first, last: longest.last, weight, at };
  }

  /** Candidates of several spans that meet another of the chosen: without them, no two of the rest meet. */
  #torn(chosen: readonly number[]): ReadonlySet<number> {
    const spans = chosen.flatMap((at) => this.#spansOf(at).map(({ first, last }) => ({ first, last, at })));
    spans.sort((a, b) => a.first - b.first || a.at - b.at);
    const torn = new Set<number>();
    for (const [place, one] of spans.entries()) {
      for (let next = place + 1; next < spans.length; next++) {
        const other = spans[next] as (typeof spans)[number];
        if (other.first > one.last) break;
        this.#budget.steps -= 1;
        for (const { at } of [one, other]) if (this.#spansOf(at).length > 1) torn.add(at);
      }
    }
    return torn;
  }

  #meet(a: number, b: number): boolean {
    return this.#spansOf(a).some((one) =>
      this.#spansOf(b).some((other) => one.first <= other.last && other.first <= one.last),
    );
  }

  #spansOf(at: number): readonly Span[] {
    return (this.#candidates[at] as Candidate).spans;
  }

  #weightAt(at: number): number {
    return (this.#candidates[at] as Candidate).weight;
  }

  #weightOf(set: readonly number[]): number {
    return set.reduce((total, at) => total + this.#weightAt(at), 0);
  }
}
