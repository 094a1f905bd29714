import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { type Candidate, keepBest } from './keep-best.ts';

/** Candidates of one to three spans that are apart, on few slots, so that most meet somebody. */
function randomCandidates(rng: Rng, count: number, slots: number): Candidate[] {
  return Array.from({ length: count }, () => {
    const spans: { first: number; last: number }[] = [];
    let from = 1 + rng.int(slots);
    for (let n = 1 + rng.int(3); n > 0; n--) {
      const last = from + rng.int(8);
      spans.push({ first: from, last });
      from = last + 2 + rng.int(slots);
    }
    return { weight: 1 + rng.int(9), spans };
  });
}

const meet = (a: Candidate, b: Candidate) =>
  a.spans.some((one) => b.spans.some((other) => one.first <= other.last && other.first <= one.last));

function bestByTrying(candidates: readonly Candidate[]): number {
  const clash = candidates.map((one) => candidates.map((other) => one !== other && meet(one, other)));
  const best = (at: number, chosen: readonly number[]): number => {
    const candidate = candidates[at];
    if (candidate === undefined) return 0;
    const without = best(at + 1, chosen);
    if (chosen.some((other) => clash[at]?.[other])) return without;
    return Math.max(without, candidate.weight + best(at + 1, [...chosen, at]));
  };
  return best(0, []);
}

describe('keeping the best', () => {
  it('[PL24] keeps a set that is apart, and none is heavier, with several spans as well', () => {
    for (let seed = 1; seed <= 600; seed++) {
      const rng = seededRng(seed);
      const candidates = randomCandidates(rng, 1 + rng.int(14), 10 + rng.int(60));
      const { kept, isProven } = keepBest(candidates, 1_000_000);
      const stays = candidates.filter((_, at) => kept[at]);
      expect(
        stays.some((one) => stays.some((other) => one !== other && meet(one, other))),
        `seed ${seed}`,
      ).toBe(false);
      expect(
        stays.reduce((total, { weight }) => total + weight, 0),
        `seed ${seed}`,
      ).toBe(bestByTrying(candidates));
      expect(isProven).toBe(true);
    }
  });

  it('[PL24] keeps a set that is apart when the steps run out, and does not call it the best', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const candidates = randomCandidates(seededRng(seed), 60, 80);
      const { kept, isProven } = keepBest(candidates, 50);
      const stays = candidates.filter((_, at) => kept[at]);
      expect(
        stays.some((one) => stays.some((other) => one !== other && meet(one, other))),
        `seed ${seed}`,
      ).toBe(false);
      expect(stays.length).toBeGreaterThan(0);
      expect(isProven).toBe(false);
    }
  });
});
