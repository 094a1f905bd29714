import { differingRows } from '#base/table.ts';
import { claimsOf } from '../address/claim.ts';
import { KeySet } from '../address/key-set.ts';
import { type OccupancyIndex, RigIndex, type UnitChange } from '../address/occupancy-index.ts';
import { sameAddresses } from '../address/unit.ts';
import type { CardKind } from '../model/card.ts';
import type { Finding, Severity } from '../model/finding.ts';
import type { FixtureId } from '../model/ids.ts';
import { plantOf } from '../model/plant.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { CardReadingChecker } from './card-unreadable.ts';
import { channelOnUnlike } from './channel-on-unlike.ts';
import { channelShared } from './channel-shared.ts';
import { circuitRule } from './circuit-findings.ts';
import { mergeFindings, withFinding, withoutFinding } from './finding-list.ts';
import { GroupedChecker } from './grouped-checker.ts';
import { NetworkChecker } from './network/network-checker.ts';
import { ownBreaksOverlap } from './own-breaks-overlap.ts';
import type { PartChecker } from './part-checker.ts';
import { pastTheEnd } from './past-the-end.ts';
import { positionRule } from './position-findings.ts';
import { RunCardsChecker } from './run-cards.ts';
import { RUN_UNITS } from './run-units.ts';
import { placeKeyOf, samePlace } from './same-place.ts';
import { slotsClaimedTwice } from './slots-claimed-twice.ts';
import { type FindingsDelta, type OpenDelta, StandingFindings } from './standing-findings.ts';
import { SupplyChecker } from './supply-checker.ts';
import { hasTypeMatter, type NewestRevisions, NO_LIBRARY, typeFindings } from './type-findings.ts';
import { UnitGroups } from './unit-groups.ts';
import { unknownMode } from './unknown-mode.ts';
import { unknownType } from './unknown-type.ts';
import { unpatched } from './unpatched.ts';
import { unreadable } from './unreadable.ts';
import { UpkeepChecker } from './upkeep-checker.ts';

export type FindingCounts = Readonly<Record<Severity, number>>;

/**
 * The findings of a rig, kept up to date edit by edit. Whatever the way it came to a rig, it holds exactly what
 * `checkRig` says of it [CH23]; an edit costs what its universe and its groups hold, not what the rig holds.
 */
export interface Checker {
  /** The rig the findings are of. */
  readonly rig: Rig;
  /** The library they know of. */
  readonly library: NewestRevisions;
  /** Who sits where in that rig. */
  readonly occupancy: OccupancyIndex;
  /** Goes on to another rig, and says which findings came and which went. */
  update(next: Rig): FindingsDelta;
  /** Goes on with another state of the library, and says the same. */
  setLibrary(library: NewestRevisions): FindingsDelta;
  /** All findings, in the order of `compareFindings`. The same array until one comes or goes. */
  findings(): readonly Finding[];
  /** The findings that name a fixture, in the same order. The same array until one of them comes or goes. */
  findingsOf(fixture: FixtureId): readonly Finding[];
  /** How many findings there are of each severity. */
  counts(): FindingCounts;
}

export function createChecker(rig: Rig, library: NewestRevisions = NO_LIBRARY): Checker {
  return new RigChecker(rig, library);
}

const NONE: readonly Finding[] = Object.freeze([]);
const NO_CHANGE: FindingsDelta = Object.freeze({ added: NONE, removed: NONE });
const UNIT_RULES = [pastTheEnd, ownBreaksOverlap, unknownType, unknownMode, unpatched, unreadable];

/** The groups that a step has to look at again. */
interface Touched {
  readonly channels: KeySet<number>;
  readonly places: KeySet<string>;
}

class RigChecker implements Checker {
  readonly #index = new RigIndex(EMPTY_RIG);
  readonly #channels = new UnitGroups<number>();
  readonly #places = new UnitGroups<string>();
  readonly #ofUnits = new StandingFindings<FixtureId>();
  readonly #ofUniverses = new StandingFindings<number>();
  readonly #ofChannels = new StandingFindings<number>();
  readonly #ofPlaces = new StandingFindings<string>();
  readonly #ofTypes = new StandingFindings<'types'>();
  readonly #parts: readonly PartChecker[] = [
    new CardReadingChecker(),
    new NetworkChecker(),
    new GroupedChecker(RUN_UNITS),
    new RunCardsChecker(),
    new GroupedChecker(circuitRule),
    new GroupedChecker(positionRule),
    new SupplyChecker(),
    new UpkeepChecker(),
  ];
  readonly #naming = new Map<FixtureId, readonly Finding[]>();
  #counts: FindingCounts = Object.freeze({ blocker: 0, caution: 0, note: 0 });
  #listed: readonly Finding[] = NONE;
  #arrived = new Set<Finding>();
  #left = new Set<Finding>();

  #library: NewestRevisions;

  constructor(rig: Rig, library: NewestRevisions) {
    this.#library = library;
    this.update(rig);
  }

  get rig(): Rig {
    return this.#index.rig;
  }

  get library(): NewestRevisions {
    return this.#library;
  }

  get occupancy(): OccupancyIndex {
    return this.#index;
  }

  update(next: Rig): FindingsDelta {
    const before = this.#index.rig;
    const { changes, universes } = this.#index.update(next);
    const retyped = touchesTypes(before, next, changes);
    const replanted = changedCards(before, next);
    if (changes.length === 0 && !retyped && replanted.size === 0) return NO_CHANGE;
    const delta: OpenDelta = { added: [], removed: [] };
    const touched: Touched = { channels: new KeySet(), places: new KeySet() };
    for (const change of changes) this.#take(change, touched, delta);
    for (const universe of universes) {
      this.#ofUniverses.settle(universe, slotsClaimedTwice(this.#index.claims(universe)), delta);
    }
    for (const channel of touched.channels) this.#ofChannels.settle(channel, this.#channelFindings(channel), delta);
    for (const place of touched.places) this.#ofPlaces.settle(place, this.#placeFindings(place), delta);
    if (retyped) this.#ofTypes.settle('types', typeFindings(next, this.#library), delta);
    if (next.cards.size + replanted.size > 0) {
      const step = { before, next, plant: plantOf(next.cards), replanted, changes, index: this.#index };
      for (const part of this.#parts) part.update(step, delta);
    }
    this.#record(delta);
    return delta;
  }

  setLibrary(library: NewestRevisions): FindingsDelta {
    this.#library = library;
    const delta: OpenDelta = { added: [], removed: [] };
    this.#ofTypes.settle('types', typeFindings(this.rig, library), delta);
    this.#record(delta);
    return delta;
  }

  findings(): readonly Finding[] {
    if (this.#arrived.size + this.#left.size > 0) {
      this.#listed = mergeFindings(this.#listed, this.#left, [...this.#arrived]);
      this.#arrived.clear();
      this.#left.clear();
    }
    return this.#listed;
  }

  findingsOf(fixture: FixtureId): readonly Finding[] {
    return this.#naming.get(fixture) ?? NONE;
  }

  counts(): FindingCounts {
    return this.#counts;
  }

  #take(change: UnitChange, touched: Touched, delta: OpenDelta): void {
    const { unit, after } = change;
    const found: Finding[] = [];
    if (after !== undefined) {
      const claims = claimsOf(after, unit.mode);
      for (const rule of UNIT_RULES) rule(unit, claims, found);
    }
    this.#ofUnits.settle(unit.fixture.id, found, delta);
    this.#regroupChannel(change, touched.channels);
    this.#regroupPlace(change, touched.places);
  }

  #regroupChannel({ unit, before, beforeMode, after }: UnitChange, touched: KeySet<number>): void {
    const old = before?.channel ?? null;
    const now = after?.channel ?? null;
    if (old !== now) {
      if (old !== null) this.#channels.drop(old, unit);
      if (now !== null) this.#channels.add(now, unit);
      if (old !== null) touched.add(old);
      if (now !== null) touched.add(now);
    } else if (now !== null && before !== undefined && after !== undefined) {
      if (unit.modeKey !== beforeMode || !sameAddresses(before, after)) touched.add(now);
    }
  }

  #regroupPlace({ unit, before, after }: UnitChange, touched: KeySet<string>): void {
    if (before?.position === after?.position && before?.unit === after?.unit) return;
    const old = before === undefined ? undefined : placeKeyOf(before);
    const now = after === undefined ? undefined : placeKeyOf(after);
    if (old !== now) {
      if (old !== undefined) this.#places.drop(old, unit);
      if (now !== undefined) this.#places.add(now, unit);
      if (old !== undefined) touched.add(old);
    }
    if (now !== undefined) touched.add(now);
  }

  #channelFindings(channel: number): readonly Finding[] {
    const units = this.#channels.shared(channel);
    if (units === undefined) return NONE;
    const finding = channelOnUnlike(channel, units) ?? channelShared(channel, units);
    return finding === undefined ? NONE : [finding];
  }

  #placeFindings(place: string): readonly Finding[] {
    const units = this.#places.shared(place);
    return units === undefined ? NONE : [samePlace(units)];
  }

  #record({ added, removed }: FindingsDelta): void {
    if (added.length + removed.length === 0) return;
    const counts = { ...this.#counts };
    for (const finding of removed) {
      counts[finding.severity] -= 1;
      if (!this.#arrived.delete(finding)) this.#left.add(finding);
      for (const id of finding.fixtures) this.#unname(id, finding);
    }
    for (const finding of added) {
      counts[finding.severity] += 1;
      this.#arrived.add(finding);
      for (const id of finding.fixtures) this.#naming.set(id, withFinding(this.findingsOf(id), finding));
    }
    this.#counts = Object.freeze(counts);
  }

  #unname(fixture: FixtureId, finding: Finding): void {
    const named = withoutFinding(this.findingsOf(fixture), finding);
    if (named.length === 0) this.#naming.delete(fixture);
    else this.#naming.set(fixture, named);
  }
}

const NO_CARDS: ReadonlySet<CardKind> = new Set();

function changedCards(before: Rig, next: Rig): ReadonlySet<CardKind> {
  if (before.cards === next.cards) return NO_CARDS;
  const differing = differingRows(before.cards, next.cards).flatMap(
    ({ before: old, after }) => (after ?? old)?.kind ?? [],
  );
  return new Set(differing);
}

/** Whether a step could change what is said of types: such a step costs a pass over the rig, if it has any copied type. */
function touchesTypes(before: Rig, next: Rig, changes: readonly UnitChange[]): boolean {
  if (before.wanted !== next.wanted || before.signatures !== next.signatures) return true;
  if (before.modes !== next.modes) return hasTypeMatter(before) || hasTypeMatter(next);
  const retyped = changes.some(
    ({ unit, before: old, beforeMode, after }) =>
      old === undefined ||
      after === undefined ||
      unit.modeKey !== beforeMode ||
      old.firmware !== after.firmware ||
      old.type !== after.type,
  );
  return retyped && hasTypeMatter(next);
}
