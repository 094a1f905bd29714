import type { FixtureType, TypeMode } from '../model/fixture-type.ts';
import { reachedParts } from './reached-parts.ts';

/** A mode of a library revision, copied into a rig: a later change of the library changes nothing here. */
export interface Pin {
  /** The type in its crew's library, and the revision that was copied. */
  readonly typeId: string;
  readonly number: number;
  /** Content hash of the whole revision. */
  readonly hash: string;
  /** The revision with this mode alone, and the parts it reaches. */
  readonly type: FixtureType;
}

/** A revision of a library's type, whole. */
export interface LibraryRevision {
  readonly typeId: string;
  readonly number: number;
  readonly hash: string;
  readonly type: FixtureType;
}

/** The copy of one mode that goes into a rig. Throws when the revision has no such mode. */
export function pinMode({ typeId, number, hash, type }: LibraryRevision, modeName: string): Pin {
  const mode = type.modes.find((each) => each.name === modeName);
  if (mode === undefined) throw new Error(`${type.maker} ${type.model} has no mode ${JSON.stringify(modeName)}`);
  const reached = reachedParts(type.parts, [mode.root]);
  return {
    typeId,
    number,
    hash,
    type: { ...type, parts: type.parts.filter((part) => reached.has(part.name)), modes: [mode] },
  };
}

/** The pinned mode itself. */
export const pinnedMode = (pin: Pin): TypeMode | undefined => pin.type.modes[0];
