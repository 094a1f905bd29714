import { ok, type Result, refuse } from '#base/result.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { SLOTS } from '../model/address.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import { foldName, type ModeId, modeId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { type LibraryRevision, type Pin, pinMode, pinnedMode } from '../type/pin.ts';
import { footprintsOfMode } from '../type/slots-of.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** A mode as a rig calls it, and the mode of the library that it is. */
export interface ModePair {
  readonly mode: string;
  readonly is: string;
}

/** A type as a rig calls it, the revision that is to be copied into it, and which modes are which. */
export interface TakeType {
  readonly type: string;
  readonly revision: LibraryRevision;
  readonly modes: readonly ModePair[];
}

/**
 * Copies modes of a library revision into a rig, under the names the rig has for them. Units that are set to them then take
 * the slots the revision says; what that does to their neighbours the preview shows. [PL16]
 */
export function takeTypePlan(rig: Rig, { type, revision, modes }: TakeType): Result<Plan, PlanRefusal> {
  const edits: Edit[] = [];
  for (const { mode: name, is } of modes) {
    const mode = revision.type.modes.find((each) => each.name === is);
    if (mode === undefined) return refuse({ code: 'no-such-mode', mode: is });
    const all = footprintsOfMode(revision.type, mode);
    const widest = Math.max(0, ...all);
    if (all.length > ADDRESS_FIELDS.length) return refuse({ code: 'too-many-breaks', mode: is, breaks: all.length });
    if (widest > SLOTS) return refuse({ code: 'mode-too-wide', mode: is, slots: widest });
    // A mode that takes no slot still listens to its start address, and a finding says what is wrong with it.
    const footprints = widest === 0 ? [1] : all;
    const before = getRow(rig.modes, modeId(type, name));
    const pin = pinMode(revision, is);
    if (before !== undefined && JSON.stringify(before.pin) === JSON.stringify(pin)) continue;
    edits.push({ kind: 'set-mode', type: before?.type ?? type, mode: before?.mode ?? name, footprints, pin });
  }
  return edits.length === 0 ? refuse({ code: 'changes-nothing' }) : ok({ name: 'take-type', edits });
}

/** How a mode of a rig came to be taken for one of the library. */
export type MatchedBy = 'copy' | 'name' | 'slots';

export interface ModeMatch {
  /** As the rig calls it. */
  readonly mode: string;
  /** Its slots by break, as the rig knows them; null when it does not. */
  readonly footprints: readonly number[] | null;
  /** The library's mode; null when none could be told. */
  readonly is: string | null;
  readonly by: MatchedBy | null;
}

/**
 * Which modes of a type of a rig, those that only its units name included, are which of a revision: the one they were
 * copied from, else the one of their name, else the only one with their footprint. [PL17]
 */
export function matchModes(rig: Rig, type: string, revision: LibraryRevision): readonly ModeMatch[] {
  const names = new Map(revision.type.modes.map((mode) => [foldName(mode.name), mode.name]));
  return modesNamed(rig, type).map(({ mode, footprints, pin }): ModeMatch => {
    const copied = pin?.typeId === revision.typeId ? names.get(foldName(pinnedMode(pin)?.name ?? '')) : undefined;
    if (copied !== undefined) return { mode, footprints, is: copied, by: 'copy' };
    const named = names.get(foldName(mode));
    if (named !== undefined) return { mode, footprints, is: named, by: 'name' };
    const alike = revision.type.modes.filter(
      (each) => footprintsOfMode(revision.type, each).join('+') === footprints?.join('+'),
    );
    const [only] = alike;
    if (alike.length !== 1 || only === undefined) return { mode, footprints, is: null, by: null };
    return { mode, footprints, is: only.name, by: 'slots' };
  });
}

interface NamedMode {
  readonly mode: string;
  readonly footprints: readonly number[] | null;
  readonly pin: Pin | null;
}

/** Every mode of a type that the rig knows or that a unit is set to. */
function modesNamed(rig: Rig, type: string): readonly NamedMode[] {
  const key = foldName(type);
  const named = new Map<ModeId, NamedMode>();
  for (const mode of rowsOf(rig.modes)) if (foldName(mode.type) === key) named.set(mode.id, mode);
  for (const fixture of rowsOf(rig.fixtures)) {
    const id = modeId(fixture.type, fixture.mode);
    if (foldName(fixture.type) === key && !named.has(id)) {
      named.set(id, { mode: fixture.mode, footprints: null, pin: null });
    }
  }
  return [...named.values()];
}

/** The names under which a rig has copies of a library's type. */
export function namesOfType(rig: Rig, typeId: string): readonly string[] {
  const names = new Map<string, string>();
  for (const { type, pin } of rowsOf(rig.modes)) if (pin?.typeId === typeId) names.set(foldName(type), type);
  return [...names.values()];
}
