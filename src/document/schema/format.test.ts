import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { z } from 'zod';
import type { Universe } from '#engine/model/address.ts';
import { FIELDS } from '#engine/model/field.ts';
import { fixtureId, modeId, noteId, positionId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { listRig } from '#tests/support/random-plan.ts';
import { readRig, watchRig } from '../read/rig-reader.ts';
import { packBlock } from './block.ts';
import { cellKey } from './cell-key.ts';
import { goneKey } from './gone-key.ts';
import { createRigDoc, FORMAT, formatOf, MAP_NAMES } from './rig-doc.ts';
import { STORED, storeMode, storeNote, storePosition, storeUniverse } from './stored.ts';

const GOLDEN = new URL('../../../tests/fixtures/documents/', import.meta.url);
const names = readdirSync(GOLDEN)
  .filter((name) => name.endsWith('.bin'))
  .map((name) => name.slice(0, -4));

/** The lists of a rig, each in the order of its ids. */
function sortedLists(rig: Rig): unknown {
  const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
  return Object.fromEntries(Object.entries(listRig(rig)).map(([part, rows]) => [part, [...rows].sort(byId)]));
}

describe('documents of every format', () => {
  it.each(names)('[DO3] %s reads as it always did', (name) => {
    const wanted: unknown = JSON.parse(readFileSync(new URL(`${name}.json`, GOLDEN), 'utf8'));
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
    const stored = {
      format: FORMAT,
      maps: MAP_NAMES,
      fields: FIELDS,
      entries: Object.values(STORED).map((schema) => z.toJSONSchema(schema, { io: 'input' })),
      samples: [
        packBlock([{ id, cells: Object.fromEntries(FIELDS.map((field) => [field, field])) }]),
        cellKey(id, 'channel'),
        goneKey(id, 7),
        storeMode({ id: modeId('Spot', 'A'), type: 'Spot', mode: 'A', footprints }),
        storePosition({ id: positionId('Bridge'), name: 'Bridge', order: 1 }),
        storeUniverse({ id: '1', universe: 1 as Universe, label: 'Stage' }),
        storeNote({ id: noteId('n1'), text: 'text', order: 1 }),
        modeId(' Spot  One', 'É'),
        positionId(' Bridge  One'),
      ],
    };
    // A new hash means a new format: raise FORMAT, read the old one still, add a golden document of the new one.
    const hash = createHash('sha256').update(JSON.stringify(stored)).digest('hex');
    expect(hash).toBe('8e9a6e108d254c7c8c6759537e5a8b799ca7fdd933fb6139efb8c016d27ef1d4');
  });
});
