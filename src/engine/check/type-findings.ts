import { getRow, rowsOf } from '#base/table.ts';
import type { Finding } from '../model/finding.ts';
import type { Fixture } from '../model/fixture.ts';
import type { SignedHazard } from '../model/fixture-type.ts';
import { type FixtureId, foldName, type ModeId, modeId } from '../model/ids.ts';
import type { Mode, Rig } from '../model/rig.ts';
import { hasCopies } from '../type/copied-types.ts';
import { firmwareFits, firmwareKey, sameFirmware } from '../type/firmware.ts';
import { needsSignature } from '../type/needs-signature.ts';
import { type Pin, pinnedMode } from '../type/pin.ts';
import { slotsOf } from '../type/slots-of.ts';
import { makeFinding } from './make-finding.ts';

/** The newest revision of each type of the crew's library, as far as it is known here. */
export type NewestRevisions = ReadonlyMap<string, { readonly number: number; readonly hash: string }>;

export const NO_LIBRARY: NewestRevisions = new Map();

const NONE: readonly Finding[] = Object.freeze([]);

/** Whether a rig has anything that `typeFindings` could speak of. */
export function hasTypeMatter(rig: Rig): boolean {
  return rig.wanted.size > 0 || hasCopies(rig);
}

/**
 * What the copied types and the firmware of a rig give to say: slots nobody listens to, firmware that lacks its mode or is
 * not the wanted one, hazards nobody answers for, newer revisions. One finding a mode, type or hazard, naming all its units.
 * A pass over the whole rig: see `Checker` for when it is made. [CH13]–[CH17]
 */
export function typeFindings(rig: Rig, library: NewestRevisions): readonly Finding[] {
  if (!hasTypeMatter(rig)) return NONE;
  const groups = unitsByMode(rig);
  const found: Finding[] = [];
  for (const { mode, units } of groups) {
    if (mode?.pin === undefined || mode.pin === null) continue;
    if (slotsOf(mode.pin.type, modeIn(mode.pin)).breaks.length === 0) {
      found.push(makeFinding({ rule: 'no-slots', type: mode.type, mode: mode.mode }, ids(units)));
    }
    found.push(...firmwareOfMode(mode, mode.pin, units));
  }
  found.push(...wantedFirmware(rig, groups), ...unsignedHazards(rig, groups), ...newerRevisions(groups, library));
  return found;
}

interface ModeUnits {
  readonly type: string;
  readonly mode: Mode | undefined;
  readonly units: readonly Fixture[];
}

const NO_MODE = { name: '', description: '', root: '', channels: [], firmware: [] };

const modeIn = (pin: Pin) => pinnedMode(pin) ?? NO_MODE;

const ids = (units: readonly Fixture[]): FixtureId[] => units.map((unit) => unit.id);

function unitsByMode(rig: Rig): readonly ModeUnits[] {
  const groups = new Map<ModeId, Fixture[]>();
  for (const fixture of rowsOf(rig.fixtures)) {
    const key = modeId(fixture.type, fixture.mode);
    const units = groups.get(key);
    if (units === undefined) groups.set(key, [fixture]);
    else units.push(fixture);
  }
  return [...groups].map(([key, units]) => {
    const mode = getRow(rig.modes, key);
    return { type: mode?.type ?? firstType(units), mode, units };
  });
}

/** The type as its first unit by id spells it, so that the order of rows does not matter. */
const firstType = (units: readonly Fixture[]) =>
  units.reduce((first, unit) => (unit.id < first.id ? unit : first)).type;

function firmwareOfMode(mode: Mode, pin: Pin, units: readonly Fixture[]): Finding[] {
  const needs = modeIn(pin).firmware;
  if (needs.length === 0) return [];
  const lacking = units.filter(({ firmware }) => firmware !== '' && firmwareFits(firmware, needs) === 'no');
  return groupBy(lacking, ({ firmware }) => firmwareKey(firmware)).map((group) => {
    const found = group.reduce((first, unit) => (unit.id < first.id ? unit : first)).firmware;
    return makeFinding({ rule: 'firmware-mode', type: mode.type, mode: mode.mode, found, needs }, ids(group));
  });
}

function wantedFirmware(rig: Rig, groups: readonly ModeUnits[]): Finding[] {
  if (rig.wanted.size === 0) return [];
  const others = new Map<string, Fixture[]>();
  for (const { units } of groups) {
    for (const unit of units) {
      const key = foldName(unit.type);
      const wanted = getRow(rig.wanted, key);
      if (wanted === undefined || unit.firmware === '' || sameFirmware(unit.firmware, wanted.version)) continue;
      others.set(key, [...(others.get(key) ?? []), unit]);
    }
  }
  return [...others].map(([key, units]) => {
    const { type = '', version = '' } = getRow(rig.wanted, key) ?? {};
    return makeFinding({ rule: 'firmware-wanted', type, wanted: version }, ids(units));
  });
}

interface Unsigned {
  /** As they are written, by folded name. */
  readonly types: Map<string, string>;
  readonly units: Fixture[];
}

function unsignedHazards(rig: Rig, groups: readonly ModeUnits[]): Finding[] {
  const open = new Map<SignedHazard, Unsigned>();
  for (const { type, mode, units } of groups) {
    for (const hazard of mode?.pin ? needsSignature(mode.pin.type.hazards) : []) {
      const signed = getRow(rig.signatures, hazard)?.types.map(foldName) ?? [];
      if (signed.includes(foldName(type))) continue;
      const entry: Unsigned = open.get(hazard) ?? { types: new Map(), units: [] };
      open.set(hazard, entry);
      entry.types.set(foldName(type), type);
      entry.units.push(...units);
    }
  }
  return [...open].map(([hazard, { types, units }]) =>
    makeFinding({ rule: 'hazard-unsigned', hazard, types: [...types.values()].sort() }, ids(units)),
  );
}

function newerRevisions(groups: readonly ModeUnits[], library: NewestRevisions): Finding[] {
  const behind = groups.flatMap(({ mode, units }) => {
    const newest = mode?.pin ? library.get(mode.pin.typeId) : undefined;
    if (!mode?.pin || newest === undefined || newest.hash === mode.pin.hash) return [];
    return [{ type: mode.type, here: mode.pin.number, newest: newest.number, units }];
  });
  return groupBy(behind, ({ type, here, newest }) => JSON.stringify([foldName(type), here, newest])).map((group) => {
    const type = group.map((each) => each.type).sort()[0] ?? '';
    const { here = 0, newest = 0 } = group[0] ?? {};
    return makeFinding(
      { rule: 'library-differs', type, here, newest },
      group.flatMap((each) => ids(each.units)),
    );
  });
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return [...groups.values()];
}
