import { rowsOf } from '#base/table.ts';
import { SLOTS } from '#engine/model/address.ts';
import type { Edit, Plan } from '#engine/model/edit.ts';
import { foldName, type ModeId, modeId } from '#engine/model/ids.ts';
import { compareNatural } from '#engine/model/natural-order.ts';
import type { Mode, Rig } from '#engine/model/rig.ts';

/** A type and mode that units are set to, whether or not the rig knows its slots. */
export interface UsedMode {
  readonly id: ModeId;
  readonly type: string;
  readonly mode: string;
}

export interface ModesInUse {
  /** The modes the rig knows, by type and mode. */
  readonly known: readonly Mode[];
  /** What units are set to and the rig does not know. */
  readonly unknown: readonly UsedMode[];
  readonly units: ReadonlyMap<ModeId, number>;
}

/** The modes of a rig and how many units are set to each. */
export function modesInUse(rig: Rig): ModesInUse {
  const known = [...rowsOf(rig.modes)].sort(compareModes);
  const units = new Map<ModeId, number>();
  const unknown = new Map<ModeId, UsedMode>();
  const ids = new Set<ModeId>(known.map(({ id }) => id));
  for (const { type, mode } of rowsOf(rig.fixtures)) {
    if (type.trim() === '') continue;
    const id = modeId(type, mode);
    units.set(id, (units.get(id) ?? 0) + 1);
    if (!ids.has(id) && !unknown.has(id)) unknown.set(id, { id, type, mode });
  }
  return { known, unknown: [...unknown.values()].sort(compareModes), units };
}

const compareModes = (a: UsedMode, b: UsedMode) => compareNatural(a.type, b.type) || compareNatural(a.mode, b.mode);

/** Slots per break as a person types them: `27`, `1+1`, `10 20`; undefined when they cannot be a mode's. */
export function parseSlots(text: string): readonly number[] | undefined {
  const parts = text.split(/[\s+,;/]+/).filter((part) => part !== '');
  const slots = parts.map((part) => (/^\d{1,3}$/.test(part) ? Number(part) : Number.NaN));
  const fits = slots.length >= 1 && slots.length <= 4 && slots.every((n) => n <= SLOTS) && slots.some((n) => n > 0);
  return fits ? slots : undefined;
}

/** `27`, `1+1`: `parseSlots` reads it back. */
export const formatSlots = (footprints: readonly number[]): string => footprints.join('+');

/** Gives a mode another name, here and on every unit that is set to it. */
export function renameMode(rig: Rig, mode: Mode, to: string): Plan {
  return { name: 'set-mode', edits: renameEdits(rig, mode, { type: mode.type, mode: to }) };
}

/** Gives a type another name, in all its modes and on every unit that is set to one of them. */
export function renameType(rig: Rig, modes: readonly Mode[], to: string): Plan {
  return { name: 'set-mode', edits: modes.flatMap((mode) => renameEdits(rig, mode, { type: to, mode: mode.mode })) };
}

function renameEdits(rig: Rig, { id, type, mode, footprints, pin }: Mode, to: { type: string; mode: string }): Edit[] {
  const edits: Edit[] = [];
  if (modeId(to.type, to.mode) !== id) edits.push({ kind: 'remove-mode', type, mode });
  edits.push({ kind: 'set-mode', ...to, footprints, pin });
  for (const fixture of rowsOf(rig.fixtures)) {
    if (modeId(fixture.type, fixture.mode) !== id) continue;
    edits.push({ kind: 'set-cell', fixture: fixture.id, field: 'type', value: to.type });
    edits.push({ kind: 'set-cell', fixture: fixture.id, field: 'mode', value: to.mode === '' ? null : to.mode });
  }
  return edits;
}

/** The modes of each type, types by name. */
export function byType(modes: readonly Mode[]): readonly (readonly Mode[])[] {
  const types = new Map<string, Mode[]>();
  for (const mode of modes) {
    const key = foldName(mode.type);
    const some = types.get(key);
    if (some) some.push(mode);
    else types.set(key, [mode]);
  }
  return [...types.values()];
}
