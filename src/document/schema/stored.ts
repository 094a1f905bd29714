import { z } from 'zod';
import { LAST_UNIVERSE, type Universe } from '#engine/model/address.ts';
import { SIGNED_HAZARDS, type SignedHazard } from '#engine/model/fixture-type.ts';
import { foldName, isId, modeId, type NoteId, positionId } from '#engine/model/ids.ts';
import type { Mode, Note, Position, Signature, UniverseLabel, WantedFirmware } from '#engine/model/rig.ts';
import { readPin, storePin } from './stored-pin.ts';

/** Slots per break: 1 to 4 numbers, each 0 to 512 and at least one above 0. */
export const footprintsSchema = z
  .array(z.number().int().min(0).max(512))
  .min(1)
  .max(4)
  .refine((footprints) => footprints.some((slots) => slots > 0), 'at least one break has a slot');

/** What the entries of the small parts look like. Longer tuples come from a newer version; what they add is passed over. */
export const STORED = {
  modes: z.tuple([z.string(), z.string(), footprintsSchema]).rest(z.unknown()),
  positions: z.tuple([z.string(), z.number()]).rest(z.unknown()),
  universes: z.tuple([z.string().min(1)]).rest(z.unknown()),
  notes: z.tuple([z.string(), z.number()]).rest(z.unknown()),
  wanted: z.tuple([z.string(), z.string().min(1)]).rest(z.unknown()),
  signatures: z.tuple([z.string().min(1), z.string(), z.array(z.string())]).rest(z.unknown()),
} as const;

/** The mode stored under `key`, whose fourth value may be its pin; undefined when the entry is none, or its key is not the one its names make. */
export function readMode(key: string, stored: unknown): Mode | undefined {
  const entry = STORED.modes.safeParse(stored);
  if (!entry.success) return undefined;
  const [type, mode, footprints, pin] = entry.data;
  const id = modeId(type, mode);
  if (id !== key) return undefined;
  return Object.freeze({ id, type, mode, footprints: Object.freeze(footprints), pin: readPin(pin) ?? null });
}

export function readPosition(key: string, stored: unknown): Position | undefined {
  const entry = STORED.positions.safeParse(stored);
  if (!entry.success) return undefined;
  const [name, order] = entry.data;
  const id = positionId(name);
  return id === key ? Object.freeze({ id, name, order }) : undefined;
}

export function readUniverse(key: string, stored: unknown): UniverseLabel | undefined {
  const entry = STORED.universes.safeParse(stored);
  const universe = Number(key);
  const known = Number.isInteger(universe) && universe >= 1 && universe <= LAST_UNIVERSE && String(universe) === key;
  if (!entry.success || !known) return undefined;
  return Object.freeze({ id: key, universe: universe as Universe, label: entry.data[0] });
}

export function readNote(key: string, stored: unknown): Note | undefined {
  const entry = STORED.notes.safeParse(stored);
  if (!entry.success || !isId(key)) return undefined;
  const [text, order] = entry.data;
  return Object.freeze({ id: key as NoteId, text, order });
}

export function readWanted(key: string, stored: unknown): WantedFirmware | undefined {
  const entry = STORED.wanted.safeParse(stored);
  if (!entry.success) return undefined;
  const [type, version] = entry.data;
  return foldName(type) === key ? Object.freeze({ id: key, type, version }) : undefined;
}

export function readSignature(key: string, stored: unknown): Signature | undefined {
  const entry = STORED.signatures.safeParse(stored);
  const id = SIGNED_HAZARDS.find((hazard: SignedHazard) => hazard === key);
  if (!entry.success || id === undefined) return undefined;
  const [person, on, types] = entry.data;
  return Object.freeze({ id, person, on, types: Object.freeze(types) });
}

export const storeMode = ({ type, mode, footprints, pin }: Mode): unknown[] =>
  pin === null ? [type, mode, [...footprints]] : [type, mode, [...footprints], storePin(pin)];
export const storePosition = ({ name, order }: Position): unknown[] => [name, order];
export const storeUniverse = ({ label }: UniverseLabel): unknown[] => [label];
export const storeNote = ({ text, order }: Note): unknown[] => [text, order];
export const storeWanted = ({ type, version }: WantedFirmware): unknown[] => [type, version];
export const storeSignature = ({ person, on, types }: Signature): unknown[] => [person, on, [...types]];
