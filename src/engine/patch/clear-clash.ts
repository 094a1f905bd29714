import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { type Claim, slotRuns } from '../address/claim.ts';
import { createOccupancy, type OccupancyIndex } from '../address/occupancy-index.ts';
import { actAsOne, type Sharer } from '../address/unit.ts';
import { type Absolute, absolute, SLOTS } from '../model/address.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import { footprintsOf, modeOf } from '../model/find-mode.ts';
import type { Finding, SlotRun } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, modeId } from '../model/ids.ts';
import { isLocked } from '../model/locked.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';
import { Room } from './room.ts';

/** Fixtures that act as one (or one alone), and which of their breaks are in trouble. They move together. */
interface Party {
  readonly fixtures: readonly Fixture[];
  readonly claims: readonly Claim[];
  /** How many others, and ends of universes, its claims run into. */
  readonly trouble: number;
  /** Its slots are not known, so that no room can be found for it; or one of it is locked. */
  readonly fixed: boolean;
}

/**
 * Clears one clash, or one break that runs past the end. Of the parties to a clash one stays and the others move: those of
 * the fewest units, then those in the most trouble, then the smallest, then those at the highest address. A break goes to
 * the nearest free room in its universe, else to the next universe that has room. [PL14] [PL15]
 */
export function clearClash(
  rig: Rig,
  finding: Finding,
  index: OccupancyIndex = createOccupancy(rig),
): Result<Plan, PlanRefusal> {
  const parties = partiesThatMove(rig, finding, index);
  return parties.ok ? moveParties(rig, parties.value, index) : parties;
}

type Parties = Result<readonly Party[], PlanRefusal>;

function partiesThatMove(rig: Rig, finding: Finding, index: OccupancyIndex): Parties {
  if (finding.rule !== 'slots-claimed-twice' && finding.rule !== 'past-the-end') {
    return refuse({ code: 'not-a-clash', rule: finding.rule });
  }
  const fixtures = finding.fixtures.map((id) => getRow(rig.fixtures, id));
  const standing = fixtures.filter((fixture) => fixture !== undefined);
  const [only] = standing;
  if (standing.length < fixtures.length || only === undefined) return refuse({ code: 'finding-gone' });
  if (finding.rule === 'past-the-end') {
    const over = slotRuns(rig, only).filter((claim) => claim.over > 0 && claim.part === finding.part);
    return togetherWith(rig, only, over, index);
  }
  const within = (fixture: Fixture) => slotRuns(rig, fixture).filter((claim) => meets(claim, finding.run));
  if (standing.length === 1) return togetherWith(rig, only, within(only).sort(byStart).slice(1), index);
  return allButOne(partiesOf(rig, standing, within, index));
}

const meets = (a: SlotRun, b: SlotRun) => a.universe === b.universe && a.first <= b.last && b.first <= a.last;

const byStart = (a: Claim, b: Claim) => a.first - b.first || a.part - b.part;

/** `fixture` and those that act as one with it, as the one party that moves. */
function togetherWith(rig: Rig, fixture: Fixture, claims: readonly Claim[], index: OccupancyIndex): Parties {
  const [claim] = claims;
  if (claim === undefined) return refuse({ code: 'finding-gone' });
  const fixtures = [fixture];
  for (const seat of index.of(claim.universe).seats) {
    if (seat.fixture === fixture.id || seat.first !== claim.first || seat.part !== claim.part) continue;
    const other = getRow(rig.fixtures, seat.fixture);
    if (other !== undefined && actAsOne(sharer(fixture), sharer(other))) fixtures.push(other);
  }
  return ok([{ fixtures, claims, trouble: 0, fixed: false }]);
}

const sharer = (fixture: Fixture): Sharer => ({ fixture, modeKey: modeId(fixture.type, fixture.mode) });

function partiesOf(
  rig: Rig,
  fixtures: readonly Fixture[],
  within: (fixture: Fixture) => readonly Claim[],
  index: OccupancyIndex,
): readonly Party[] {
  const groups: Fixture[][] = [];
  const byKey = new Map<string, Fixture[]>();
  for (const fixture of fixtures) {
    const shared = fixture.channel === null ? `alone ${fixture.id}` : `channel ${fixture.channel}`;
    const key = [shared, modeId(fixture.type, fixture.mode), ...fixture.addresses].join(' ');
    const group = byKey.get(key);
    if (group !== undefined) group.push(fixture);
    else {
      const fresh = [fixture];
      byKey.set(key, fresh);
      groups.push(fresh);
    }
  }
  const weigh = groups.length <= WEIGHED;
  return groups.flatMap((group) => {
    const [one] = group;
    const claims = one === undefined ? [] : within(one);
    if (one === undefined || claims.length === 0) return [];
    return [
      {
        fixtures: group,
        claims,
        trouble: weigh ? troubleOf(rig, group, one, index) : 0,
        fixed: modeOf(rig, one) === undefined || group.some(isLocked),
      },
    ];
  });
}

/** With more parties than this, trouble elsewhere is not weighed: nearly all of them move anyhow. */
const WEIGHED = 64;

function troubleOf(rig: Rig, group: readonly Fixture[], one: Fixture, index: OccupancyIndex): number {
  const own = new Set<FixtureId>(group.map(({ id }) => id));
  const met = new Set<FixtureId>();
  let ends = 0;
  for (const claim of slotRuns(rig, one)) {
    if (claim.over > 0) ends += 1;
    for (const seat of index.of(claim.universe).seats) {
      if (seat.first > claim.last) break;
      if (seat.last >= claim.first && !own.has(seat.fixture)) met.add(seat.fixture);
    }
  }
  return met.size + ends;
}

function allButOne(parties: readonly Party[]): Parties {
  if (parties.length < 2) return refuse({ code: 'finding-gone' });
  const held = parties.flatMap(({ fixtures }) => fixtures.filter(isLocked));
  if (parties.filter(({ fixtures }) => fixtures.some(isLocked)).length > 1) {
    return refuse({ code: 'held', fixtures: held.map(({ id }) => id).sort() });
  }
  const stays = [...parties].sort(compareStaying)[0];
  return ok(parties.filter((party) => party !== stays));
}

/** Who stays comes first. Of two parties, leaving one in place moves the other, so the better mover comes last. */
function compareStaying(a: Party, b: Party): number {
  return (
    Number(b.fixed) - Number(a.fixed) ||
    b.fixtures.length - a.fixtures.length ||
    a.trouble - b.trouble ||
    slotsOf(b) - slotsOf(a) ||
    startOf(a) - startOf(b) ||
    (idOf(a) < idOf(b) ? -1 : 1)
  );
}

const slotsOf = (party: Party) =>
  party.claims.reduce((total, { first, last, over }) => total + last - first + 1 + over, 0);
const startOf = (party: Party) => party.claims.reduce((lowest, { first }) => Math.min(lowest, first), SLOTS);
const idOf = (party: Party) => party.fixtures.map(({ id }) => id).sort()[0] ?? '';

function moveParties(rig: Rig, parties: readonly Party[], index: OccupancyIndex): Result<Plan, PlanRefusal> {
  const moving = new Map<FixtureId, ReadonlySet<number>>();
  for (const { fixtures, claims } of parties) {
    const parts = new Set(claims.map(({ part }) => part));
    for (const { id } of fixtures) moving.set(id, parts);
  }
  const room = new Room(index, (seat) => moving.get(seat.fixture)?.has(seat.part) === true);
  const edits: Edit[] = [];
  for (const party of [...parties].sort((a, b) => startOf(a) - startOf(b) || (idOf(a) < idOf(b) ? -1 : 1))) {
    const moved = moveParty(rig, party, room);
    if (!moved.ok) return moved;
    edits.push(...moved.value);
  }
  return planOf(rig, 'clear-clash', edits);
}

function moveParty(rig: Rig, { fixtures, claims }: Party, room: Room): Result<readonly Edit[], PlanRefusal> {
  const edits: Edit[] = [];
  const [one] = fixtures;
  if (one === undefined) return ok(edits);
  if (modeOf(rig, one) === undefined) return refuse({ code: 'mode-unknown', fixture: one.id });
  for (const { part, universe, first } of claims) {
    const slots = footprintsOf(rig, one)[part - 1] ?? 0;
    if (slots > SLOTS) return refuse({ code: 'too-wide', fixture: one.id, slots });
    const start: Absolute | undefined = room.nearestAnywhere(absolute(universe, first), slots);
    const field = ADDRESS_FIELDS[part - 1];
    if (start === undefined || field === undefined) return refuse({ code: 'no-room', fixture: one.id, slots });
    room.take(start, slots);
    for (const fixture of fixtures) edits.push(...cellEdits(fixture, field, start));
  }
  return ok(edits);
}
