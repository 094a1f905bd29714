import type { Card } from '../model/card.ts';
import type { Mode, Note, Position, Signature, UniverseLabel, WantedFirmware } from '../model/rig.ts';

export const samePosition = (a: Position, b: Position) => a.name === b.name && a.order === b.order;
export const sameUniverse = (a: UniverseLabel, b: UniverseLabel) => a.label === b.label;
export const sameNote = (a: Note, b: Note) => a.text === b.text && a.order === b.order;
export const sameWanted = (a: WantedFirmware, b: WantedFirmware) => a.type === b.type && a.version === b.version;
export const sameSignature = (a: Signature, b: Signature) =>
  a.person === b.person && a.on === b.on && sameJson(a.types, b.types);
export const sameCard = (a: Card, b: Card) => sameJson(a.cells, b.cells);
export const sameMode = (a: Mode, b: Mode) =>
  a.type === b.type && a.mode === b.mode && sameJson(a.footprints, b.footprints) && sameJson(a.pin, b.pin);

/** Plain data whose properties come in one order always, as readers make it. */
const sameJson = (a: unknown, b: unknown) => a === b || JSON.stringify(a) === JSON.stringify(b);
