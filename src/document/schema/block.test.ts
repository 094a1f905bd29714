import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { FIELDS } from '#engine/model/field.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { cellsOf, readFixture } from '#engine/model/read-fixture.ts';
import { randomValue } from '#tests/support/random-plan.ts';
import { packBlock, unpackBlock } from './block.ts';

describe('block', () => {
  it('[DO5] unpacks what was packed', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const rows = Array.from({ length: rng.int(20) }, (_, n) => {
        const cells = Object.fromEntries(FIELDS.map((field) => [field, randomValue(rng)]));
        const id = fixtureId(`f${n}`);
        return { id, cells: cellsOf(readFixture(id, cells)) };
      });
      expect(unpackBlock(packBlock(rows)), `seed ${seed}`).toEqual(rows);
    }
  });

  it('[DO6] packs a row as its id and its cells in FIELDS order, without trailing nulls', () => {
    expect(packBlock([{ id: fixtureId('f1'), cells: { channel: 5, unit: '4A' } }])).toBe('[["f1",5,null,"4A"]]');
    expect(packBlock([{ id: fixtureId('f1'), cells: {} }])).toBe('[["f1"]]');
  });

  it('[DO7] reads a longer row of a newer format and a shorter one of an older', () => {
    const longer = JSON.stringify([['f1', ...FIELDS.map((_field, n) => n), 'newer', { more: 1 }]]);
    expect(unpackBlock(longer)).toEqual([
      { id: 'f1', cells: Object.fromEntries(FIELDS.map((field, n) => [field, n])) },
    ]);
    expect(unpackBlock('[["f1",7]]')).toEqual([{ id: 'f1', cells: { channel: 7 } }]);
  });

  it.each(['', '{', '{}', '5', 'null', '[5,null,"x",{}]', '[[]]', '[[5,1]]', '[["a/b",1]]', '[[""]]'])(
    '[DO8] finds no row in %j',
    (text) => {
      expect(unpackBlock(text)).toEqual([]);
    },
  );

  it('[DO8] passes over values that are no cell', () => {
    expect(unpackBlock('[["f1",[5],{"a":1},true,"Spot"],7,["f2",1e999]]')).toEqual([
      { id: 'f1', cells: { type: 'Spot' } },
      { id: 'f2', cells: {} },
    ]);
    expect(unpackBlock(['f1'])).toEqual([]);
  });
});
