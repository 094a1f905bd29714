import { rowsOf } from '#base/table.ts';
import type { Claim } from '../address/claim.ts';
import { claimsOf } from '../address/claim.ts';
import { createOccupancy, type RigIndex } from '../address/occupancy-index.ts';
import { actAsOne, type Unit } from '../address/unit.ts';
import { hasClash, type UniverseClaims } from '../address/universe-claims.ts';
import type { Slot, Universe } from '../model/address.ts';
import type { SlotRun } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';

/** Two fixtures that claim the same slots, or one whose own breaks do (then named twice). `asOne`: they act as one on purpose. */
interface OverlapPair {
  readonly run: SlotRun;
  readonly fixtures: readonly [FixtureId, FixtureId];
  readonly asOne: boolean;
}

/** The figures of a rig, as headers and imports show them. Lists of fixtures are sorted by id. */
export interface RigSummary {
  readonly fixtures: number;
  readonly patched: number;
  readonly unpatched: readonly FixtureId[];
  /** Universes in which a slot is claimed, ascending. */
  readonly universes: readonly Universe[];
  /** The slots of every break that has a start address added up, in full where they run past the end. */
  readonly slotsAsked: number;
  /** By universe and first slot. At most `PAIR_LIMIT`; `morePairs` says that there are others. */
  readonly overlapPairs: readonly OverlapPair[];
  readonly morePairs: boolean;
  readonly pastEnd: readonly FixtureId[];
  /** Channels of more than one fixture, ascending. */
  readonly sharedChannels: readonly number[];
}

/** The most pairs a summary lists: a thousand fixtures on one address would make half a million. */
const PAIR_LIMIT = 2000;

/** The figures of a rig. [SU1] */
export function rigSummary(rig: Rig): RigSummary {
  const index = createOccupancy(rig);
  const unpatched: FixtureId[] = [];
  const pastEnd: FixtureId[] = [];
  const channels = new Map<number, number>();
  let slotsAsked = 0;
  for (const fixture of rowsOf(rig.fixtures)) {
    const mode = index.mode(fixture);
    const claims = claimsOf(fixture, mode);
    for (const { first, last, over } of claims) slotsAsked += last - first + 1 + over;
    if (claims.length === 0) unpatched.push(fixture.id);
    if (claims.some((claim) => claim.over > 0)) pastEnd.push(fixture.id);
    if (fixture.channel !== null) channels.set(fixture.channel, (channels.get(fixture.channel) ?? 0) + 1);
  }
  const overlapPairs = pairsOf(index);
  return Object.freeze({
    fixtures: rig.fixtures.size,
    patched: rig.fixtures.size - unpatched.length,
    unpatched: unpatched.sort(),
    universes: index.universes(),
    slotsAsked,
    overlapPairs: overlapPairs.slice(0, PAIR_LIMIT),
    morePairs: overlapPairs.length > PAIR_LIMIT,
    pastEnd: pastEnd.sort(),
    sharedChannels: [...channels]
      .filter(([, count]) => count > 1)
      .map(([channel]) => channel)
      .sort((a, b) => a - b),
  });
}

function pairsOf(index: RigIndex): OverlapPair[] {
  const pairs: OverlapPair[] = [];
  for (const universe of index.universes()) {
    const claims = index.claims(universe);
    if (claims !== undefined && hasClash(claims)) pairsIn(claims, pairs);
    if (pairs.length > PAIR_LIMIT) break;
  }
  return pairs;
}

interface Sitter {
  readonly unit: Unit;
  readonly claim: Claim;
}

function pairsIn(claims: UniverseClaims, pairs: OverlapPair[]): void {
  const sitters = sittersOf(claims);
  for (const [at, { unit, claim }] of sitters.entries()) {
    for (let next = at + 1; next < sitters.length; next++) {
      const other = sitters[next] as Sitter;
      if (other.claim.first > claim.last) break;
      if (pairs.length > PAIR_LIMIT) return;
      pairs.push(pairOf({ unit, claim }, other));
    }
  }
}

function sittersOf(claims: UniverseClaims): Sitter[] {
  const units = [...new Set(claims.units)];
  const sitters = units.flatMap((unit) =>
    claimsOf(unit.fixture, unit.mode)
      .filter((claim) => claim.universe === claims.universe)
      .map((claim) => ({ unit, claim })),
  );
  return sitters.sort(
    (a, b) =>
      a.claim.first - b.claim.first ||
      (a.unit.fixture.id < b.unit.fixture.id
        ? -1
        : a.unit.fixture.id > b.unit.fixture.id
          ? 1
          : a.claim.part - b.claim.part),
  );
}

function pairOf(a: Sitter, b: Sitter): OverlapPair {
  const last = Math.min(a.claim.last, b.claim.last) as Slot;
  const [one, other] = [a.unit.fixture.id, b.unit.fixture.id].sort() as [FixtureId, FixtureId];
  return {
    run: { universe: a.claim.universe, first: b.claim.first, last },
    fixtures: [one, other],
    asOne: a.unit !== b.unit && actAsOne(a.unit, b.unit),
  };
}
