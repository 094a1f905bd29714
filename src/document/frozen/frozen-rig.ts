import { z } from 'zod';
import { ok, type Result, refuse } from '#base/result.ts';
import { rowsOf, type Table, tableOf } from '#base/table.ts';
import { CARD_KINDS, type Card, type CardKind, isCardKey, makeCard } from '#engine/model/card.ts';
import { FIELDS, type Field } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { type FixtureId, isId } from '#engine/model/ids.ts';
import { cellOf, readFixture } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { isCellValue } from '../schema/block.ts';
import { FORMAT } from '../schema/rig-doc.ts';
import {
  readMode,
  readNote,
  readPosition,
  readSignature,
  readUniverse,
  readWanted,
  storeMode,
  storeNote,
  storePosition,
  storeSignature,
  storeUniverse,
  storeWanted,
} from '../schema/stored.ts';

/**
 * A rig as text, the same for equal rigs whatever way they came about: rows in the order of their ids, cells in that of their fields, no space.
 * A hash of it is a hash of the rig. [DO60]
 */
export function freezeRig(rig: Rig): string {
  return JSON.stringify({
    format: FORMAT,
    fields: FIELDS,
    fixtures: sorted(rig.fixtures).map(freezeFixture),
    modes: sorted(rig.modes).map((mode) => [mode.id, storeMode(mode)]),
    positions: sorted(rig.positions).map((position) => [position.id, storePosition(position)]),
    universes: sorted(rig.universes).map((universe) => [universe.id, storeUniverse(universe)]),
    notes: sorted(rig.notes).map((note) => [note.id, storeNote(note)]),
    wanted: sorted(rig.wanted).map((wanted) => [wanted.id, storeWanted(wanted)]),
    signatures: sorted(rig.signatures).map((signature) => [signature.id, storeSignature(signature)]),
    cards: sorted(rig.cards).map(({ kind, key, cells }) => [kind, key, cells]),
  });
}

function sorted<Row extends { readonly id: string }>(table: Table<Row>): Row[] {
  return [...rowsOf(table)].sort((a, b) => (a.id < b.id ? -1 : 1));
}

function freezeFixture(fixture: Fixture): unknown[] {
  const row: unknown[] = [fixture.id, ...FIELDS.map((field) => cellOf(fixture, field))];
  while (row.at(-1) === null) row.pop();
  return row;
}

const stored = z.array(z.tuple([z.string(), z.unknown()]));
const FROZEN = z.object({
  format: z.number().int().min(1),
  fields: z.array(z.string()),
  fixtures: z.array(z.array(z.unknown())),
  modes: stored,
  positions: stored,
  universes: stored,
  notes: stored,
  wanted: stored,
  signatures: stored,
  cards: z.array(z.tuple([z.string(), z.string(), z.record(z.string(), z.unknown())])),
});

export type ThawRefusal = 'malformed' | 'newer';

/** The rig that a text was made of. What cannot be read whole is refused: a frozen rig is all of a rig or none. [DO61] */
export function thawRig(text: string): Result<Rig, ThawRefusal> {
  const parsed = FROZEN.safeParse(parseJson(text));
  if (!parsed.success) return refuse('malformed');
  const frozen = parsed.data;
  if (frozen.format > FORMAT) return refuse('newer');
  const parts = {
    fixtures: tableFrom(frozen.fixtures, (row) => thawFixture(row, frozen.fields)),
    modes: tableFrom(frozen.modes, ([id, entry]) => readMode(id, entry)),
    positions: tableFrom(frozen.positions, ([id, entry]) => readPosition(id, entry)),
    universes: tableFrom(frozen.universes, ([id, entry]) => readUniverse(id, entry)),
    notes: tableFrom(frozen.notes, ([id, entry]) => readNote(id, entry)),
    wanted: tableFrom(frozen.wanted, ([id, entry]) => readWanted(id, entry)),
    signatures: tableFrom(frozen.signatures, ([id, entry]) => readSignature(id, entry)),
    cards: tableFrom(frozen.cards, thawCard),
  };
  const { fixtures, modes, positions, universes, notes, wanted, signatures, cards } = parts;
  if (!fixtures || !modes || !positions || !universes || !notes || !wanted || !signatures || !cards) {
    return refuse('malformed');
  }
  return ok(Object.freeze({ fixtures, modes, positions, universes, notes, wanted, signatures, cards }));
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // No text of ours: it reads as nothing, and is refused.
    return undefined;
  }
}

/** The table of all entries; undefined when one cannot be read, or two are of one id. */
function tableFrom<Entry, Row extends { readonly id: string }>(
  entries: readonly Entry[],
  read: (entry: Entry) => Row | undefined,
): Table<Row> | undefined {
  const rows: Row[] = [];
  for (const entry of entries) {
    const row = read(entry);
    if (row === undefined) return undefined;
    rows.push(row);
  }
  const table = tableOf(rows);
  return table.size === rows.length ? table : undefined;
}

function thawFixture([id, ...values]: readonly unknown[], fields: readonly string[]): Fixture | undefined {
  if (typeof id !== 'string' || !isId(id) || values.length > fields.length) return undefined;
  const cells: Partial<Record<Field, string | number>> = {};
  for (const [at, value] of values.entries()) {
    const field = FIELDS.find((known) => known === fields[at]);
    if (field === undefined || !isCellValue(value)) return undefined;
    if (value !== null) cells[field] = value;
  }
  return readFixture(id as FixtureId, cells);
}

function thawCard([kind, key, cells]: readonly [string, string, Record<string, unknown>]): Card | undefined {
  const known = CARD_KINDS.find((each) => each === kind) as CardKind | undefined;
  if (known === undefined || !isCardKey(known, key)) return undefined;
  const card = makeCard(known, key, cells as Card['cells']);
  // A cell that the kind does not have, or that is none, would be lost.
  const isWhole = Object.entries(cells).every(([field, value]) => isCellValue(value) && card?.cells[field] === value);
  return isWhole ? card : undefined;
}
