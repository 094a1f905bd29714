import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { z } from 'zod';
import type { Universe } from '#engine/model/address.ts';
import { CARD_CELLS } from '#engine/model/card.ts';
import { FIELDS } from '#engine/model/field.ts';
import { fixtureId, modeId, noteId, positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { pinMode } from '#engine/type/pin.ts';
import { listRig } from '#tests/support/random-plan.ts';
import { readRig, watchRig } from '../read/rig-reader.ts';
import { packBlock } from './block.ts';
import { cardCellKey } from './card-key.ts';
import { cellKey } from './cell-key.ts';
import { goneKey } from './gone-key.ts';
import { createRigDoc, FORMAT, formatOf, MAP_NAMES } from './rig-doc.ts';
import { STORED, storeMode, storeNote, storePosition, storeSignature, storeUniverse, storeWanted } from './stored.ts';
import { pinSchema } from './stored-pin.ts';

const GOLDEN = new URL('../../../tests/fixtures/documents/', import.meta.url);
const names = readdirSync(GOLDEN)
  .filter((name) => name.endsWith('.bin'))
  .map((name) => name.slice(0, -4));

/** The lists of a rig, each in the order of its ids. */
function sortedLists(rig: Rig): unknown {
  const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
  return Object.fromEntries(Object.entries(listRig(rig)).map(([part, rows]) => [part, [...rows].sort(byId)]));
}

interface Golden {
  readonly fixtures: readonly { readonly id: string }[];
  readonly modes: readonly object[];
}

/** Cells that a golden document holds beyond the fields of its format, since a later one gave them a name. */
const NAMED_SINCE: Readonly<Record<string, object>> = { 'format-1-strange fixture2': { firmware: 'one field more' } };

/** Cells that came after format 1, as a row without them reads. */
const LATER_CELLS = { firmware: '', run: '', along: 0, cable: null, lock: '' };

/** A golden reading with the parts that came after its format: empty, since nobody could say them then. */
const withLaterParts = (name: string, golden: Golden): unknown => ({
  wanted: [],
  signatures: [],
  cards: [],
  ...golden,
  fixtures: golden.fixtures.map((fixture) => ({ ...LATER_CELLS, ...NAMED_SINCE[`${name} ${fixture.id}`], ...fixture })),
  modes: golden.modes.map((mode) => ({ pin: null, ...mode })),
});

describe('documents of every format', () => {
  it.each(names)('[DO3] %s reads as it always did', (name) => {
    const wanted = withLaterParts(name, JSON.parse(readFileSync(new URL(`${name}.json`, GOLDEN), 'utf8')));
    const doc = new Y.Doc();
    Y.applyUpdate(doc, readFileSync(new URL(`${name}.bin`, GOLDEN)));
    expect(formatOf(doc)).toBe('current');
    expect(sortedLists(readRig(doc))).toEqual(wanted);
    const kept = createRigDoc();
    const reader = watchRig(kept);
    Y.applyUpdate(kept, readFileSync(new URL(`${name}.bin`, GOLDEN)));
    expect(sortedLists(reader.rig())).toEqual(wanted);
  });

  it('[DO3] there is a golden document of this format', () => {
    expect(names.some((name) => name.startsWith(`format-${FORMAT}-`))).toBe(true);
  });

  it('[DO4] what is stored has not changed without a new format', () => {
    const id = fixtureId('f1');
    const footprints = [1, 2];
    const [type] = GENERIC_TYPES;
    const pin = type === undefined ? null : pinMode({ typeId: 't1', number: 3, hash: 'h', type }, '8 bit');
    const stored = {
      format: FORMAT,
      maps: MAP_NAMES,
      fields: FIELDS,
      cards: CARD_CELLS,
      pin: z.toJSONSchema(pinSchema, { io: 'input' }),
      entries: Object.values(STORED).map((schema) => z.toJSONSchema(schema, { io: 'input' })),
      samples: [
        packBlock([{ id, cells: Object.fromEntries(FIELDS.map((field) => [field, field])) }]),
        cellKey(id, 'channel'),
        goneKey(id, 7),
        storeMode({ id: modeId('Spot', 'A'), type: 'Spot', mode: 'A', footprints, pin: null }),
        storeMode({ id: modeId('Spot', 'A'), type: 'Spot', mode: 'A', footprints, pin }).map((value) => typeof value),
        storeWanted({ id: 'spot', type: 'Spot', version: '1.2' }),
        storeSignature({ id: 'laser', person: 'Ona', on: '2026-11-25', types: ['Spot'] }),
        storePosition({ id: positionId('Bridge'), name: 'Bridge', order: 1 }),
        storeUniverse({ id: '1', universe: 1 as Universe, label: 'Stage' }),
        storeNote({ id: noteId('n1'), text: 'text', order: 1 }),
        modeId(' Spot  One', 'É'),
        positionId(' Bridge  One'),
        cardCellKey({ card: 'circuit', key: 'a/1', field: 'rating' }),
      ],
    };
    // A new hash means a new format: raise FORMAT, read the old one still, add a golden document of the new one.
    const hash = createHash('sha256').update(JSON.stringify(stored)).digest('hex');
    expect(hash).toBe('54cfceb2ddcd7ebc765e2f6bb4f590080ed8241305f326a2ea75bced3d82bace');
  });
});
