import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { z } from 'zod';
import { seededRng } from '#base/rng.ts';
import type { DraftEdit } from '#engine/draft/draft.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { randomDraftEdits } from '#tests/support/random-draft.ts';
import { applyDraftEdits, DRAFT_EDIT_LIMIT, draftEditSchema } from './apply-draft-edits.ts';
import { draftCellKey, parseDraftCellKey } from './draft-cell.ts';
import { createDraftDoc } from './draft-doc.ts';
import { DRAFT_FORMAT, DRAFT_MAP_NAMES, draftFormatOf } from './draft-maps.ts';
import { readDraft, watchDraft } from './draft-reader.ts';

const mode = (id: string, order: number | null = 1): DraftEdit => ({
  of: 'mode',
  mode: id,
  field: 'order',
  value: order,
});
const row = (id: string, order: number | null, at = 'm'): DraftEdit => ({
  of: 'row',
  mode: at,
  row: id,
  field: 'order',
  value: order,
});
const slots = (id: string, value: string | null): DraftEdit => ({
  of: 'row',
  mode: 'm',
  row: id,
  field: 'slots',
  value,
});

describe('draft document', () => {
  it('[DD1] a new one is of the current format, and says what its edits say', () => {
    const doc = createDraftDoc([mode('m'), row('r', 1), slots('r', '5-6')]);
    expect(draftFormatOf(doc)).toBe('current');
    expect(readDraft(doc).modes[0]?.rows[0]).toMatchObject({ id: 'r', slots: '5-6', name: '' });
    expect(draftFormatOf(new Y.Doc())).toBe('none');
    const many = Array.from({ length: DRAFT_EDIT_LIMIT + 5 }, (_, at) => mode(`m${at}`, at));
    expect(readDraft(createDraftDoc(many)).modes).toHaveLength(many.length);
    expect(() => createDraftDoc([mode('')])).toThrow('no id');
  });

  it('[DD2] what is stored has not changed without a new format', () => {
    const cells: DraftEdit[] = [
      { of: 'facts', field: 'maker', value: 'a' },
      mode('m'),
      row('r', 1),
      { of: 'repeat', mode: 'm', repeat: 'p', field: 'count', value: '2' },
    ];
    const schema = z.toJSONSchema(draftEditSchema, { io: 'input' });
    const stored = { format: DRAFT_FORMAT, maps: DRAFT_MAP_NAMES, schema, keys: cells.map(draftCellKey) };
    // A new hash means a new format: raise DRAFT_FORMAT, and read the old one still.
    expect(createHash('sha256').update(JSON.stringify(stored)).digest('hex')).toBe(
      '8e0887b7a35733eb2f842803e8946542686c3829b2e06585d02182a11408bd30',
    );
  });

  it('[DD3] a key is read as the cell it was made of; anything else is none', () => {
    for (let seed = 1; seed <= 50; seed++) {
      for (const { value: _value, ...cell } of randomDraftEdits(seededRng(seed), 40)) {
        expect(parseDraftCellKey(draftCellKey(cell))).toEqual(cell);
      }
    }
    for (const key of ['', 'facts', 'facts/no', 'mode//order', 'mode/m/x', 'row/m/order', 'row/m/r/x/order', 'x/y']) {
      expect(parseDraftCellKey(key), key).toBeUndefined();
    }
  });

  it('[DD4] any content at all is read', () => {
    const doc = createDraftDoc([mode('m'), row('r', 1), slots('r', '1')]);
    const cells = doc.getMap('cells');
    const values = [7, null, true, [], {}, new Y.Map(), Number.NaN, Number.POSITIVE_INFINITY, new Uint8Array(2)];
    for (const [at, value] of values.entries()) {
      cells.set('facts/maker', value instanceof Y.Map ? new Y.Map() : value);
      cells.set(`row/m/r${at}/order`, value);
      cells.set(`row/m/r/__proto__`, 'x');
      cells.set(`mode/__proto__/order`, 1);
    }
    cells.set('facts/model', 'x'.repeat(2001));
    cells.set('row/m/r/ranges', 'x'.repeat(20_001));
    const draft = readDraft(doc);
    expect([draft.facts.maker, draft.facts.model, draft.modes[1]?.rows[0]?.ranges]).toEqual(['', '', '']);
    expect(draft.modes.map((each) => [each.id, each.rows.map((one) => one.id)])).toEqual([
      ['__proto__', []],
      ['m', ['r', 'r0']],
    ]);
  });

  it('[DD5] modes and rows without an order, and repeats without a count, are passed over with what is in them', () => {
    const doc = createDraftDoc([
      row('r', 1),
      slots('s', '3'),
      { of: 'repeat', mode: 'm', repeat: 'p', field: 'name', value: 'Pixel' },
    ]);
    expect(readDraft(doc).modes).toEqual([]);
    applyDraftEdits(doc, [mode('m')], 'me');
    expect(readDraft(doc).modes[0]).toMatchObject({ rows: [{ id: 'r' }], repeats: [] });
    applyDraftEdits(doc, [row('s', 0)], 'me');
    expect(readDraft(doc).modes[0]?.rows.map((each) => [each.id, each.slots])).toEqual([
      ['s', '3'],
      ['r', ''],
    ]);
  });
});

describe('applyDraftEdits', () => {
  it.each<[string, unknown]>([
    ['text too long', { ...slots('r', 'x'.repeat(2001)) }],
    ['ranges too long', { of: 'row', mode: 'm', row: 'r', field: 'ranges', value: 'x'.repeat(20_001) }],
    ['half a character', slots('r', '\ud83d')],
    ['an id with a slash', mode('a/b')],
    ['no id', mode('')],
    ['an id of 65', mode('x'.repeat(65))],
    ['an order that is text', { of: 'mode', mode: 'm', field: 'order', value: '1' }],
    ['an order that is no number', mode('m', Number.NaN)],
    ['a cell that is a number', { of: 'row', mode: 'm', row: 'r', field: 'slots', value: 1 }],
    ['an unknown field', { of: 'facts', field: 'colour', value: 'red' }],
    ['more than an edit', { ...mode('m'), extra: 1 }],
  ])('[DD10] refuses %s with its place, and writes nothing', (_name, edit) => {
    const doc = createDraftDoc();
    const made = applyDraftEdits(doc, [mode('m'), edit as DraftEdit], 'me');
    expect(made).toMatchObject({ ok: false, error: { code: 'malformed', edit: 1 } });
    expect(doc.getMap('cells').size).toBe(0);
  });

  it('[DD10] takes text and ranges up to their limits, and edits up to theirs', () => {
    const doc = createDraftDoc();
    const ranges: DraftEdit = { of: 'row', mode: 'm', row: 'r', field: 'ranges', value: 'x'.repeat(20_000) };
    expect(applyDraftEdits(doc, [ranges, slots('r', 'x'.repeat(2000)), mode('x'.repeat(64))], 'me').ok).toBe(true);
    const many = Array.from({ length: DRAFT_EDIT_LIMIT + 1 }, () => mode('m'));
    expect(applyDraftEdits(doc, many, 'me')).toMatchObject({ ok: false, error: { code: 'too-many-edits' } });
    expect(applyDraftEdits(doc, many.slice(1), 'me').ok).toBe(true);
  });

  it('[DD11] a document of another format, or none, is not written', () => {
    const doc = new Y.Doc();
    expect(applyDraftEdits(doc, [mode('m')], 'me')).toEqual({ ok: false, error: { code: 'not-a-draft' } });
    doc.getMap('meta').set('format', DRAFT_FORMAT + 1);
    expect(applyDraftEdits(doc, [mode('m')], 'me')).toEqual({ ok: false, error: { code: 'newer-format' } });
  });

  it('[DD12] is one transaction, and writes exactly the difference', () => {
    const doc = createDraftDoc([mode('m'), row('r', 1), slots('r', '1')]);
    const keys: string[][] = [];
    doc.getMap('cells').observe(({ keysChanged }) => keys.push([...keysChanged].map(String)));
    let updates = 0;
    doc.on('update', () => {
      updates += 1;
    });
    applyDraftEdits(doc, [mode('m'), slots('r', '2'), slots('r', '1'), slots('q', null), slots('q', '')], 'me');
    expect([keys, updates]).toEqual([[], 0]);
    applyDraftEdits(doc, [slots('r', '2'), slots('r', '3'), row('q', 2), { ...mode('m', null) }], 'me');
    expect([keys, updates]).toEqual([[['row/m/r/slots', 'row/m/q/order', 'mode/m/order']], 1]);
    expect(doc.getMap('cells').get('row/m/r/slots')).toBe('3');
  });
});

describe('watchDraft', () => {
  it('[DD20] all peers that have received the same updates, in any order, read the same draft, and so does a reading kept up', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rng = seededRng(seed);
      const net = createDocPeers([1, 2, 3], createDraftDoc([mode('m1'), mode('m2', 2)]));
      const readers = net.docs.map(watchDraft);
      for (let step = 0; step < 40; step++) {
        const doc = rng.pick(net.docs);
        applyDraftEdits(doc, randomDraftEdits(rng, 5), doc.clientID);
        while (rng.int(3) > 0 && net.deliverOne(rng));
        const kept = readers.map((reader) => reader.draft());
        expect(kept, `seed ${seed}`).toEqual(net.docs.map(readDraft));
      }
      while (net.deliverOne(rng));
      const [first, ...others] = net.docs.map(readDraft);
      for (const other of others) expect(other, `seed ${seed}`).toEqual(first);
    }
  });

  it('[DD21] what a change does not touch stays the same object, and a change of nothing that is read is not told', () => {
    const doc = createDraftDoc([mode('m'), mode('n', 2), row('r', 1), row('s', 2), row('t', 1, 'n')]);
    const reader = watchDraft(doc);
    let told = 0;
    const stop = reader.onChange(() => {
      told += 1;
    });
    const before = reader.draft();
    applyDraftEdits(doc, [slots('r', '1')], 'me');
    const after = reader.draft();
    expect(told).toBe(1);
    expect(after.modes[1]).toBe(before.modes[1]);
    expect(after.facts).toBe(before.facts);
    expect(after.modes[0]?.rows[1]).toBe(before.modes[0]?.rows[1]);
    expect(after.modes[0]?.rows[0]).not.toBe(before.modes[0]?.rows[0]);
    applyDraftEdits(doc, [slots('gone', '1')], 'me');
    expect([reader.draft() === after, told]).toEqual([true, 1]);
    stop();
    applyDraftEdits(doc, [slots('r', '2')], 'me');
    expect([reader.draft() === after, told]).toEqual([false, 1]);
    reader.close();
    const last = reader.draft();
    applyDraftEdits(doc, [slots('r', '3')], 'me');
    expect(reader.draft()).toBe(last);
  });
});
