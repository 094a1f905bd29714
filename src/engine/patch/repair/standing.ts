import { getRow } from '#base/table.ts';
import { type Claim, claimsOf, footprintAt } from '../../address/claim.ts';
import type { Seat } from '../../address/occupancy.ts';
import type { OccupancyIndex } from '../../address/occupancy-index.ts';
import { absolute, SLOTS } from '../../model/address.ts';
import { ADDRESS_FIELDS } from '../../model/field.ts';
import { modeOf } from '../../model/find-mode.ts';
import type { FixtureId } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';
import { isHeld, type Party, partiesOf } from '../party.ts';
import { costOf, type RepairOptions } from './repair-options.ts';
import type { Span } from './taken-spans.ts';

/** A party where it stands: what it claims, and what moving all of it costs. */
export interface Standing extends Party {
  readonly claims: readonly Claim[];
  readonly spans: readonly Span[];
  readonly cost: number;
  /** It is not moved: it is locked, or how many slots it takes is not known or more than a universe has. */
  readonly isFixed: boolean;
  /** It cannot stay as it is, whoever else goes: it runs past the end, or its own breaks meet. */
  readonly isBroken: boolean;
}

/** The parties that claim a slot in a universe in which something is wrong, by their first slots, ties by id. */
export function standingsOf(rig: Rig, options: RepairOptions, index: OccupancyIndex): readonly Standing[] {
  const ids = new Set<FixtureId>();
  for (const universe of index.universes()) {
    const { seats } = index.of(universe);
    if (isTroubled(seats)) for (const { fixture } of seats) ids.add(fixture);
  }
  const fixtures = [...ids].map((id) => getRow(rig.fixtures, id)).filter((fixture) => fixture !== undefined);
  const standings = partiesOf(fixtures).map((party) => standingOf(rig, party, options));
  const firstOf = ({ spans: [span] }: Standing) => span?.first ?? 0;
  return standings.sort((a, b) => firstOf(a) - firstOf(b) || (a.lead.id < b.lead.id ? -1 : 1));
}

function isTroubled(seats: readonly Seat[]): boolean {
  let reached = 0;
  for (const { first, last, over } of seats) {
    if (over > 0 || first <= reached) return true;
    reached = last;
  }
  return false;
}

function standingOf(rig: Rig, party: Party, options: RepairOptions): Standing {
  const mode = modeOf(rig, party.lead);
  const claims = claimsOf(party.lead, mode);
  const isWide = ADDRESS_FIELDS.some((_, part) => footprintAt(mode, part) > SLOTS);
  const { spans, meet } = spansOf(claims);
  return {
    lead: party.lead,
    fixtures: party.fixtures,
    claims,
    spans,
    cost: party.fixtures.reduce((total, fixture) => total + costOf(fixture, options), 0),
    isFixed: mode === undefined || isWide || isHeld(party),
    isBroken: meet || claims.some(({ over }) => over > 0),
  };
}

/** The slots of the claims, those joined that lie end to end in a universe; and whether any of them meet. */
function spansOf(claims: readonly Claim[]): { readonly spans: readonly Span[]; readonly meet: boolean } {
  const sorted = claims.map(({ universe, first, last }) => ({
    first: absolute(universe, first) as number,
    last: absolute(universe, last) as number,
  }));
  sorted.sort((a, b) => a.first - b.first);
  const spans: Span[] = [];
  let meet = false;
  for (const { first, last } of sorted) {
    const before = spans[spans.length - 1];
    if (before === undefined || first > before.last + 1) spans.push({ first, last });
    else {
      meet ||= first <= before.last;
      spans[spans.length - 1] = { first: before.first, last: Math.max(before.last, last) };
    }
  }
  return { spans, meet };
}
