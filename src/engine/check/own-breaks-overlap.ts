import type { Claim } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Slot } from '../model/address.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** Runs of slots that two or more breaks of one fixture claim: a clash of the fixture with itself. [CH3] */
export function ownBreaksOverlap(unit: Unit, claims: readonly Claim[], found: Finding[]): void {
  if (claims.length < 2) return;
  const sorted = [...claims].sort((a, b) => a.universe - b.universe || a.first - b.first);
  let reached: Claim | undefined;
  let run: { universe: Claim['universe']; first: Slot; last: Slot } | undefined;
  const report = () => {
    if (run !== undefined) found.push(makeFinding({ rule: 'slots-claimed-twice', run }, [unit.fixture.id]));
    run = undefined;
  };
  for (const claim of sorted) {
    if (reached === undefined || reached.universe !== claim.universe) {
      report();
      reached = claim;
      continue;
    }
    const last = Math.min(claim.last, reached.last) as Slot;
    if (claim.first <= last) {
      if (run !== undefined && claim.first <= run.last + 1) run.last = Math.max(run.last, last) as Slot;
      else {
        report();
        run = { universe: claim.universe, first: claim.first, last };
      }
    }
    if (claim.last > reached.last) reached = claim;
  }
  report();
}
