import * as encoding from 'lib0/encoding';
import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { CAPS } from '#wire/caps.ts';
import { tryApply } from '../stored/load-rig.ts';
import { checkUpdate, type Reach } from './check-update.ts';

/** Updates of three people editing at once, in an order in which they can be applied. */
function someUpdates(seed: number): Uint8Array[] {
  const rng = seededRng(seed);
  const updates: Uint8Array[] = [];
  const docs = [1, 2, 3].map((client) => {
    const doc = new Y.Doc();
    doc.clientID = client;
    doc.on('update', (bytes, origin) => origin !== 'other' && updates.push(bytes));
    return doc;
  });
  for (let step = 0; step < 60; step++) {
    const doc = rng.pick(docs);
    const rows = doc.getMap('rows');
    doc.transact(() => {
      for (let n = 1 + rng.int(3); n > 0; n--) edit(rows, rng.int(5), `r${rng.int(6)}`);
    });
    const other = rng.pick(docs);
    if (other !== doc) Y.applyUpdate(other, Y.encodeStateAsUpdate(doc, Y.encodeStateVector(other)), 'other');
  }
  return updates;
}

function edit(rows: Y.Map<unknown>, kind: number, key: string): void {
  const row = rows.get(key);
  if (kind === 0) rows.delete(key);
  else if (row instanceof Y.Array && kind < 3) row.insert(0, [key, kind]);
  else rows.set(key, kind === 1 ? Y.Array.from([1]) : kind);
}

/** Whether a document can take some update after others were lost, as the check says and as the library does. */
function afterLosses(seed: number): { readonly said: string; readonly putOff: boolean } | undefined {
  const rng = seededRng(seed);
  const updates = someUpdates(seed);
  const doc = new Y.Doc();
  for (const bytes of updates.slice(0, rng.int(updates.length))) if (rng.int(8) > 0) Y.applyUpdate(doc, bytes);
  const putOff = () => doc.store.pendingStructs !== null || doc.store.pendingDs !== null;
  if (putOff()) return undefined;
  const next = rng.pick(updates);
  const reach = checkUpdate(next, reachOf(doc));
  Y.applyUpdate(doc, next);
  return { said: reach.ok ? 'taken' : reach.error, putOff: putOff() };
}

const reachOf = (doc: Y.Doc): Reach => Y.decodeStateVector(Y.encodeStateVector(doc));
const advance = (known: Reach, reach: Reach): void => {
  for (const [client, end] of reach) known.set(client, end);
};

describe('check of a document update', () => {
  it('says exactly how far the document reaches once it is applied, without applying it', () => {
    for (let seed = 0; seed < 40; seed++) {
      const doc = new Y.Doc();
      const known: Reach = new Map();
      for (const bytes of someUpdates(seed)) {
        const reach = checkUpdate(bytes, known);
        expect(reach.ok).toBe(true);
        if (reach.ok) advance(known, reach.value);
        expect(tryApply(doc, bytes)).toBe(true);
        expect(known).toEqual(reachOf(doc));
        expect(doc.store.pendingStructs).toBeNull();
      }
    }
  });

  it('says gap exactly when the document library would have to put something off', () => {
    const answers = Array.from({ length: 200 }, (_, seed) => afterLosses(seed)).filter(
      (answer) => answer !== undefined,
    );
    for (const { said, putOff } of answers) expect(said).toBe(putOff ? 'gap' : 'taken');
    expect(answers.filter(({ putOff }) => putOff).length).toBeGreaterThan(20);
  });

  it('takes merged updates, with what is known already and without holes', () => {
    const updates = someUpdates(5);
    const merged = Y.mergeUpdates(updates);
    const fresh = checkUpdate(merged, new Map());
    expect(fresh.ok).toBe(true);
    if (fresh.ok) expect(checkUpdate(merged, fresh.value)).toEqual(fresh);
    const holed = Y.mergeUpdates(updates.filter((_, nth) => nth !== 3 && nth !== 7));
    expect(checkUpdate(holed, new Map())).toEqual({ ok: false, error: 'gap' });
  });

  it('is total: noise, cuts and flips are malformed, a gap or harmless to apply', () => {
    const rng = seededRng(6);
    const updates = someUpdates(7);
    for (let round = 0; round < 4_000; round++) {
      const doc = new Y.Doc();
      const bytes = Uint8Array.from(present(updates[rng.int(updates.length)], 'an update'));
      if (bytes.length > 0) bytes[rng.int(bytes.length)] = rng.int(256);
      const part = rng.int(4) === 0 ? bytes.slice(0, rng.int(bytes.length)) : bytes;
      const reach = checkUpdate(part, new Map());
      if (!reach.ok) continue;
      tryApply(doc, part);
      expect(Y.encodeStateAsUpdate(doc)).toBeInstanceOf(Uint8Array);
    }
    expect(checkUpdate(new Uint8Array(0), new Map())).toEqual({ ok: false, error: 'malformed' });
  });

  it('gives up on an update of more parts than any honest one has, and soon on one of parts that hold nothing', () => {
    const update = (parts: number, part: readonly number[]) => {
      const writer = encoding.createEncoder();
      for (const number of [1, parts, 5, 0]) encoding.writeVarUint(writer, number);
      for (let nth = 0; nth < parts; nth++) encoding.writeUint8Array(writer, Uint8Array.from(part));
      encoding.writeVarUint(writer, 0);
      return encoding.toUint8Array(writer);
    };
    const malformed = { ok: false, error: 'malformed' };
    // Collected ranges (0) of length 1; and items of string content (4) in a type named a, ten bytes each.
    const [nothing, item] = [
      [0, 1],
      [4, 1, 1, 97, 5, 98, 98, 98, 98, 98],
    ];
    expect(checkUpdate(update(15_000, nothing), new Map()).ok).toBe(true);
    expect(checkUpdate(update(30_000, nothing), new Map())).toEqual(malformed);
    expect(checkUpdate(update(CAPS.syncUpdateParts, item), new Map()).ok).toBe(true);
    expect(checkUpdate(update(CAPS.syncUpdateParts + 1, item), new Map())).toEqual(malformed);
  });

  it('refuses what would break the document library: an operation placed by itself, one without length', () => {
    // 1 client, 1 struct, client 5, clock 0, an item with a left origin (0x80) of string content (4): origin 5:0.
    expect(checkUpdate(Uint8Array.of(1, 1, 5, 0, 0x84, 5, 0, 1, 97, 0), new Map())).toEqual({
      ok: false,
      error: 'malformed',
    });
    // 1 client, 1 struct, client 5, clock 0, a collected range (0) of length 0.
    expect(checkUpdate(Uint8Array.of(1, 1, 5, 0, 0, 0, 0), new Map())).toEqual({ ok: false, error: 'malformed' });
  });
});
