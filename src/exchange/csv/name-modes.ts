import { getRow } from '#base/table.ts';
import type { ListMode } from '#engine/list/read-list.ts';
import { modeId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';

/** A fixture's type, mode and footprint as a list has them; `footprints` undefined when it does not say. */
export interface AskedMode {
  readonly type: string;
  readonly mode: string;
  readonly footprints: readonly number[] | undefined;
}

export interface NamedMode {
  readonly mode: string;
  readonly footprints: readonly number[] | undefined;
  /** Whether a mode of its own was made because the same one has another footprint elsewhere. */
  readonly split: boolean;
}

/** What a fixture whose mode has no name is set to: the footprint itself, or no mode. */
type Unnamed = 'name-by-slots' | 'keep';

/**
 * Gives every asked mode a name under which the rig has exactly its footprint. A list that uses one mode with two
 * footprints is right about each unit, so the rarer one becomes a mode of its own, named with its slots; so does one
 * that the rig already knows otherwise, since an import must not change what is there.
 */
export function nameModes(
  asked: readonly AskedMode[],
  rig: Rig,
  unnamed: Unnamed,
): { readonly named: readonly NamedMode[]; readonly modes: readonly ListMode[] } {
  const registry = new Map<string, ListMode>();
  const known = (type: string, mode: string) =>
    getRow(rig.modes, modeId(type, mode)) ?? registry.get(modeId(type, mode));
  for (const mode of commonest(asked, unnamed)) {
    if (known(mode.type, mode.mode) === undefined) registry.set(modeId(mode.type, mode.mode), mode);
  }
  const named = asked.map(({ type, mode, footprints }): NamedMode => {
    if (footprints === undefined) return { mode, footprints: known(type, mode)?.footprints, split: false };
    const plain = mode === '' && unnamed === 'name-by-slots' ? slotsName(footprints) : mode;
    for (let attempt = 0; ; attempt++) {
      const name = attempt === 0 ? plain : splitName(mode, footprints, attempt);
      const other = known(type, name);
      if (other === undefined) registry.set(modeId(type, name), { type, mode: name, footprints });
      if (other === undefined || same(other.footprints, footprints))
        return { mode: name, footprints, split: attempt > 0 };
    }
  });
  return { named, modes: [...registry.values()] };
}

/** The footprint most often asked for under each name, the first one when they are even. */
function commonest(asked: readonly AskedMode[], unnamed: Unnamed): readonly ListMode[] {
  const counts = new Map<string, Map<string, { readonly mode: ListMode; count: number }>>();
  for (const { type, mode, footprints } of asked) {
    if (footprints === undefined || (mode === '' && unnamed === 'name-by-slots')) continue;
    const byFootprint = counts.get(modeId(type, mode)) ?? new Map();
    counts.set(modeId(type, mode), byFootprint);
    const entry = byFootprint.get(footprints.join('+')) ?? { mode: { type, mode, footprints }, count: 0 };
    entry.count += 1;
    byFootprint.set(footprints.join('+'), entry);
  }
  return [...counts.values()].map((byFootprint) => {
    const entries = [...byFootprint.values()];
    return entries.reduce((most, entry) => (entry.count > most.count ? entry : most)).mode;
  });
}

/** A mode named by nothing but its slots: `16 slots`, `1 slot`, `16+4 slots`. Goes into the rig as its name. */
function slotsName(footprints: readonly number[]): string {
  return footprints.length === 1 && footprints[0] === 1 ? '1 slot' : `${footprints.join('+')} slots`;
}

function splitName(mode: string, footprints: readonly number[], attempt: number): string {
  const slots = slotsName(footprints);
  const base = mode === '' ? slots : `${mode} (${slots})`;
  return attempt === 1 && mode !== '' ? base : `${base} ${attempt}`;
}

const same = (a: readonly number[], b: readonly number[]) =>
  a.length === b.length && a.every((part, i) => part === b[i]);
