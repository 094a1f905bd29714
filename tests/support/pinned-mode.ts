import type { Edit } from '#engine/model/edit.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import { pinMode } from '#engine/type/pin.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';

/** Puts a mode of a type into a rig, with all that is known of it. The type is called by its model there. */
export function pinnedModeEdit(type: FixtureType, modeName: string): Extract<Edit, { kind: 'set-mode' }> {
  const pin = pinMode({ typeId: `id of ${type.model}`, number: 1, hash: `hash of ${type.model}`, type }, modeName);
  const [mode] = pin.type.modes;
  if (mode === undefined) throw new Error(`no mode ${modeName}`);
  return { kind: 'set-mode', type: type.model, mode: modeName, footprints: footprintsOfMode(pin.type, mode), pin };
}
