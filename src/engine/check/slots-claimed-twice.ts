import { type ClashRun, clashRuns } from '../address/clash-runs.ts';
import { actAsOne, type Unit } from '../address/unit.ts';
import type { UniverseClaims } from '../address/universe-claims.ts';
import type { Slot, Universe } from '../model/address.ts';
import type { Finding } from '../model/finding.ts';
import { makeFinding } from './make-finding.ts';

const NONE: readonly Finding[] = Object.freeze([]);

/**
 * One finding per run of slots that the same fixtures claim [CH1]: a blocker, or a note when all of them act as one. [CH2]
 */
export function slotsClaimedTwice(claims: UniverseClaims | undefined): readonly Finding[] {
  if (claims === undefined) return NONE;
  const runs = clashRuns(claims);
  return runs.length === 0 ? NONE : runs.map((run) => judge(claims.universe as Universe, run));
}

function judge(universe: Universe, { first, last, units }: ClashRun): Finding {
  const run = Object.freeze({ universe, first: first as Slot, last: last as Slot });
  const rule = allActAsOne(units) ? 'acting-as-one' : 'slots-claimed-twice';
  return makeFinding({ rule, run }, idsOf(units));
}

function allActAsOne(units: ReadonlySet<Unit>): boolean {
  let one: Unit | undefined;
  for (const unit of units) {
    if (one !== undefined && !actAsOne(one, unit)) return false;
    one = unit;
  }
  return true;
}

function* idsOf(units: Iterable<Unit>) {
  for (const unit of units) yield unit.fixture.id;
}
