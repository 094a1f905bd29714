import type { Claim } from '../address/claim.ts';
import type { Unit } from '../address/unit.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

/** Slots of a break that lie past slot 512: no universe carries them, and a footprint never wraps into the next. [CH5] */
export function pastTheEnd(unit: Unit, claims: readonly Claim[], found: Finding[]): void {
  for (const { over, part, universe, first, last } of claims) {
    if (over === 0) continue;
    found.push(makeFinding({ rule: 'past-the-end', run: { universe, first, last }, part, over }, [unit.fixture.id]));
  }
}
