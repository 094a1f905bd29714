import type { Brand } from '#base/brand.ts';

export type FixtureId = Brand<string, 'FixtureId'>;
/** Key of a mode within a rig: folded type name and mode name. Made by `modeId` only. */
export type ModeId = Brand<string, 'ModeId'>;
/** Key of a position within a rig: its folded name. Made by `positionId` only. */
export type PositionId = Brand<string, 'PositionId'>;
export type NoteId = Brand<string, 'NoteId'>;

export const SEPARATOR = '\u001f';

/** An id is 1 to 64 characters without a control character. Throws on anything else: ids are made by us, never typed. */
export function fixtureId(text: string): FixtureId {
  if (!isId(text)) throw new Error(`not a fixture id: ${JSON.stringify(text)}`);
  return text as FixtureId;
}

export function noteId(text: string): NoteId {
  if (!isId(text)) throw new Error(`not a note id: ${JSON.stringify(text)}`);
  return text as NoteId;
}

export function isId(text: string): boolean {
  return text.length >= 1 && text.length <= 64 && /^[^\p{Cc}/]+$/u.test(text);
}

/** How names are compared: Unicode NFC, case and runs of white space do not count. */
export function foldName(name: string): string {
  const known = folded.get(name);
  if (known !== undefined) return known;
  const fold = name.normalize('NFC').replace(/\s+/gu, ' ').trim().toLowerCase();
  if (folded.size >= REMEMBERED) folded.clear();
  folded.set(name, fold);
  return fold;
}

export function modeId(type: string, mode: string): ModeId {
  const modes = modesOf(type);
  const known = modes.get(mode);
  if (known !== undefined) return known;
  const id = (foldName(type) + SEPARATOR + foldName(mode)) as ModeId;
  if (modes.size >= REMEMBERED) modes.clear();
  modes.set(mode, id);
  return id;
}

export function positionId(name: string): PositionId {
  return foldName(name) as PositionId;
}

// A rig says the same few names thousands of times. Both memories only save work, and are emptied when they fill up.
const REMEMBERED = 4096;
const folded = new Map<string, string>();
const modeIds = new Map<string, Map<string, ModeId>>();

function modesOf(type: string): Map<string, ModeId> {
  const known = modeIds.get(type);
  if (known !== undefined) return known;
  if (modeIds.size >= REMEMBERED) modeIds.clear();
  const modes = new Map<string, ModeId>();
  modeIds.set(type, modes);
  return modes;
}
