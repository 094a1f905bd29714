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
  const run = { universe, first: first as Slot, last: last as Slot };
  const rule = allActAsOne(units) ? 'acting-as-one' : 'slots-claimed-twice';
  return makeFinding(
    { rule, run },
    units.map((unit) => unit.fixture.id),
  );
}

function allActAsOne(units: readonly Unit[]): boolean {
  const one = units[0] as Unit;
  return units.every((unit) => actAsOne(one, unit));
}
