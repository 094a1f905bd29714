import { differingRows, type RowDifference } from '#base/table.ts';
import type { Universe } from '../model/address.ts';
import type { Fixture } from '../model/fixture.ts';
import { type FixtureId, type ModeId, modeId } from '../model/ids.ts';
import { EMPTY_RIG, type Mode, type Rig } from '../model/rig.ts';
import { claimsOf } from './claim.ts';
import { KeySet } from './key-set.ts';
import { type Occupancy, occupancyFrom, type Seat } from './occupancy.ts';
import { sameAddresses, typeKeyOf, type Unit } from './unit.ts';
import { addClaim, dropClaim, firstOf, lastOf, noClaims, partOf, type UniverseClaims } from './universe-claims.ts';

/** Who sits where in a rig, kept up to date edit by edit. A step costs what it changes, not what the rig holds. */
export interface OccupancyIndex {
  /** Universes in which some fixture claims a slot, ascending. The same array until that changes. */
  universes(): readonly Universe[];
  /** The occupancy of a universe, in use or not. The same object until a claim in it changes. */
  of(universe: Universe): Occupancy;
}

/** What became of one unit in a step. `before` is its row and mode before, `after` its row now; a missing one is undefined. */
export interface UnitChange {
  readonly unit: Unit;
  readonly before: Fixture | undefined;
  readonly beforeMode: ModeId;
  readonly after: Fixture | undefined;
}

/** What a step changed: units, and universes in which a claim or its claimant changed. */
export interface IndexStep {
  readonly changes: readonly UnitChange[];
  readonly universes: Iterable<number>;
}

/** The index of a rig. `update` takes it to another rig and says what changed on the way. */
export class RigIndex implements OccupancyIndex {
  rig: Rig = EMPTY_RIG;
  readonly #units = new Map<string, Unit>();
  readonly #claims = new Map<number, UniverseClaims>();
  readonly #modes = new Map<ModeId, Mode>();
  readonly #types = new Map<string, number>();
  readonly #drawn = new Map<number, Occupancy>();
  #used: readonly Universe[] | undefined;

  constructor(rig: Rig) {
    this.update(rig);
  }

  unit(fixture: FixtureId): Unit | undefined {
    return this.#units.get(fixture);
  }

  units(): Iterable<Unit> {
    return this.#units.values();
  }

  claims(universe: number): UniverseClaims | undefined {
    return this.#claims.get(universe);
  }

  /** The claims of every universe in use, in no order. */
  allClaims(): Iterable<UniverseClaims> {
    return this.#claims.values();
  }

  mode(fixture: Pick<Fixture, 'type' | 'mode'>): Mode | undefined {
    return this.#modes.get(modeId(fixture.type, fixture.mode));
  }

  universes(): readonly Universe[] {
    this.#used ??= Object.freeze([...this.#claims.keys()].sort((a, b) => a - b) as Universe[]);
    return this.#used;
  }

  of(universe: Universe): Occupancy {
    const drawn = this.#drawn.get(universe);
    if (drawn !== undefined) return drawn;
    const occupancy = occupancyFrom(universe, seatsOf(this.#claims.get(universe)));
    // An unused universe is drawn afresh each time: nothing would ever take it out again.
    if (this.#claims.has(universe)) this.#drawn.set(universe, occupancy);
    return occupancy;
  }

  update(next: Rig): IndexStep {
    const before = this.rig;
    const changes: UnitChange[] = [];
    const universes = new KeySet<number>();
    this.rig = next;
    const remodelled = before.modes !== next.modes && this.#takeModes(before, next);
    if (before.fixtures !== next.fixtures) {
      const found = differingRows(before.fixtures, next.fixtures);
      const differing = found.length > MANY ? byAddress(found) : found;
      for (const { id, before: old, after } of differing) {
        changes.push(this.#change(id, old, after, universes));
      }
    }
    if (remodelled) for (const unit of this.#units.values()) this.#remodel(unit, changes, universes);
    for (const universe of universes) this.#drawn.delete(universe);
    return { changes, universes };
  }

  #takeModes(before: Rig, next: Rig): boolean {
    const differing = differingRows(before.modes, next.modes);
    for (const { before: old, after } of differing) {
      if (old !== undefined) this.#count(old.id, -1);
      if (after !== undefined) this.#count(after.id, 1);
      if (old !== undefined) this.#modes.delete(old.id);
      if (after !== undefined) this.#modes.set(after.id, after);
    }
    return differing.length > 0;
  }

  #count(mode: ModeId, by: number): void {
    const type = typeKeyOf(mode);
    const count = (this.#types.get(type) ?? 0) + by;
    if (count === 0) this.#types.delete(type);
    else this.#types.set(type, count);
  }

  #change(id: string, old: Fixture | undefined, after: Fixture | undefined, universes: KeySet<number>): UnitChange {
    const known = this.#units.get(id);
    if (after === undefined) {
      const unit = known as Unit;
      this.#unseat(unit, universes);
      this.#units.delete(id);
      return { unit, before: old, beforeMode: unit.modeKey, after };
    }
    if (known === undefined) {
      const unit = this.#unitOf(after);
      this.#units.set(id, unit);
      this.#seat(unit, universes);
      return { unit, before: undefined, beforeMode: unit.modeKey, after };
    }
    const beforeMode = known.modeKey;
    this.#alter(known, after, universes);
    return { unit: known, before: old, beforeMode, after };
  }

  #alter(unit: Unit, after: Fixture, universes: KeySet<number>): void {
    const before = unit.fixture;
    const sameMode = before.type === after.type && before.mode === after.mode;
    if (sameMode && sameAddresses(before, after)) {
      unit.fixture = after;
      if (before.channel !== after.channel)
        for (const claim of claimsOf(after, unit.mode)) universes.add(claim.universe);
      return;
    }
    this.#unseat(unit, universes);
    unit.fixture = after;
    if (!sameMode) this.#resolve(unit);
    this.#seat(unit, universes);
  }

  /** Gives a unit what the rig's modes now say of it; a change is noted when that makes a difference. */
  #remodel(unit: Unit, changes: UnitChange[], universes: KeySet<number>): void {
    const { mode, typeKnown, fixture, modeKey } = unit;
    const now = this.#modes.get(modeKey);
    const known = now !== undefined || this.#types.has(typeKeyOf(modeKey));
    if (mode === now && typeKnown === known) return;
    this.#unseat(unit, universes);
    unit.mode = now;
    unit.typeKnown = known;
    this.#seat(unit, universes);
    changes.push({ unit, before: fixture, beforeMode: modeKey, after: fixture });
  }

  #unitOf(fixture: Fixture): Unit {
    const modeKey = modeId(fixture.type, fixture.mode);
    const mode = this.#modes.get(modeKey);
    return { fixture, modeKey, mode, typeKnown: mode !== undefined || this.#types.has(typeKeyOf(modeKey)) };
  }

  #resolve(unit: Unit): void {
    Object.assign(unit, this.#unitOf(unit.fixture));
  }

  #seat(unit: Unit, universes: KeySet<number>): void {
    for (const claim of claimsOf(unit.fixture, unit.mode)) {
      universes.add(claim.universe);
      addClaim(this.#claimsIn(claim.universe), unit, claim);
    }
  }

  #unseat(unit: Unit, universes: KeySet<number>): void {
    for (const claim of claimsOf(unit.fixture, unit.mode)) {
      const { universe } = claim;
      universes.add(universe);
      const claims = this.#claimsIn(universe);
      dropClaim(claims, unit, claim);
      if (claims.units.length > 0) continue;
      this.#claims.delete(universe);
      this.#used = undefined;
    }
  }

  #claimsIn(universe: number): UniverseClaims {
    const known = this.#claims.get(universe);
    if (known !== undefined) return known;
    const claims = noClaims(universe);
    this.#claims.set(universe, claims);
    this.#used = undefined;
    return claims;
  }
}

/** From so many changes on, they are taken universe by universe: what is looked at together then lies together in memory. */
const MANY = 500;

/** Sorted as packed numbers, address before place in the list: a tenth of the time of comparing rows. */
function byAddress(rows: readonly RowDifference<Fixture>[]): readonly RowDifference<Fixture>[] {
  const keys = Float64Array.from(rows, ({ after }, place) => (after?.addresses[0] ?? 0) * rows.length + place);
  return Array.from(keys.sort(), (key) => rows[key % rows.length] as RowDifference<Fixture>);
}

function seatsOf(claims: UniverseClaims | undefined): Seat[] {
  if (claims === undefined) return [];
  return claims.spans.map((span, i) => {
    const { fixture, mode } = claims.units[i] as Unit;
    const part = partOf(span);
    const over = claimsOf(fixture, mode).find((claim) => claim.part === part)?.over ?? 0;
    return { fixture: fixture.id, part, first: firstOf(span) + 1, last: lastOf(span) + 1, over } as Seat;
  });
}

/** An index of the occupancy of `rig`, for a question asked once; a live view keeps the one of its `Checker`. */
export function createOccupancy(rig: Rig): RigIndex {
  return new RigIndex(rig);
}
