import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { absolute, SLOTS, slotOf, universeOf } from '#engine/model/address.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { addressOf } from '#tests/support/rig-shorthand.ts';
import { linkAlone } from '../live/link-alone.ts';
import { openRigStore } from '../live/rig-store.ts';
import { aimOfKey, aimOfPoint, createCarry, slotOfX } from './carry.ts';

const universes = [1, 2, 5].map((n) => universeOf(absolute(n, 1)));

describe('where a block is carried', () => {
  const by = (key: string, at: string, ctrlKey = false) => aimOfKey({ key, ctrlKey }, addressOf(at), universes);

  it('by keys: a slot, ten slots, a universe, and never off the ribbon', () => {
    expect(by('ArrowRight', '1:9')).toBe(addressOf('1:10'));
    expect(by('ArrowLeft', '2:1')).toBe(addressOf('2:1'));
    expect(by('PageDown', '1:508')).toBe(addressOf('1:512'));
    expect(by('PageUp', '1:12')).toBe(addressOf('1:2'));
    expect(aimOfKey({ key: 'ArrowDown', ctrlKey: true }, addressOf('2:7'), universes)).toBe(addressOf('5:7'));
    expect(aimOfKey({ key: 'ArrowUp', ctrlKey: true }, addressOf('1:7'), universes)).toBe(addressOf('1:7'));
    expect(by('ArrowDown', '2:7')).toBeUndefined();
    expect(by('x', '2:7')).toBeUndefined();
  });

  it('by pointer: the slot that was grasped is under it, as far as the ribbon goes', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const rng = seededRng(seed);
      const places = { left: rng.int(300), length: 512 + rng.int(1500), top: -rng.int(400), line: 60 + rng.int(60) };
      const row = rng.int(universes.length);
      const slot = 1 + rng.int(SLOTS);
      const grip = rng.int(40);
      const x = places.left + ((slot - 0.5) / SLOTS) * places.length;
      const y = places.top + (row + 0.5) * places.line;
      const at = aimOfPoint({ x, y }, grip, places, universes);
      expect(slotOfX(x, places.left, places.length), `seed ${seed}`).toBe(slot);
      expect(at, `seed ${seed}`).toBe(absolute(universes[row] ?? 0, Math.max(1, slot - grip)));
      const far = aimOfPoint({ x: x + 9000, y: y + 9000 }, grip, places, universes);
      expect(far && [universeOf(far), slotOf(far)], `seed ${seed}`).toEqual([5, SLOTS]);
    }
    expect(aimOfPoint({ x: 1, y: 1 }, 0, { left: 0, length: 9, top: 0, line: 9 }, [])).toBeUndefined();
  });
});

describe('carrying', () => {
  const open = () => {
    const doc = createRigDoc();
    const edits: readonly Edit[] = [
      { kind: 'set-mode', type: 'Bar', mode: 'A', footprints: [4, 8] },
      {
        kind: 'add-fixture',
        fixture: fixtureId('f1'),
        cells: { type: 'Bar', mode: 'A', address: 1, address2: 101, order: 1 },
      },
    ];
    applyPlan(doc, { name: 'import', edits }, 'seed');
    const seen: unknown[] = [];
    const link = { ...linkAlone(), setWhere: (where: unknown) => void seen.push(where) };
    const store = openRigStore({ doc, link, origin: 'me', isMine: () => true, clock: { now: () => 0 } });
    return { store, link, seen, carry: createCarry(store) };
  };
  const block = { fixture: fixtureId('f1'), part: 2 };
  const from = addressOf('1:101');

  it('writes once, when it is put, and is taken back as one step', () => {
    const { store, carry } = open();
    const addresses = () => store.row(block.fixture)?.fixture.addresses;
    carry.pickUp(block, from, 'keys');
    carry.aim(addressOf('3:9'));
    expect(addresses()).toEqual([1, 101]);
    carry.put();
    expect(addresses()).toEqual([1, addressOf('3:9')]);
    expect(carry.state()).toEqual({
      carried: undefined,
      last: { kind: 'moved', fixture: 'f1', from, to: addressOf('3:9') },
    });
    carry.takeBack();
    expect(addresses()).toEqual([1, 101]);
    expect(carry.state().last).toEqual({ kind: 'taken-back' });
  });

  it('lets others see the cell it is about, for as long as it is carried', () => {
    const { seen, carry } = open();
    carry.pickUp(block, from, 'keys');
    carry.aim(addressOf('3:9'));
    const cell = { fixture: 'f1', field: 'address2' };
    expect(seen).toEqual([
      { ...cell, at: from },
      { ...cell, at: addressOf('3:9') },
    ]);
    carry.leave();
    expect(seen.slice(2)).toEqual([null]);
  });

  it('[LK2] puts nothing down and picks nothing up that is locked, and says so', () => {
    const { store, carry } = open();
    const lock = { kind: 'set-cell', fixture: block.fixture, field: 'lock', value: 'Ona' } as const;
    const last = { kind: 'no-plan', refusal: { code: 'locked', fixture: 'f1' } };
    carry.pickUp(block, from, 'pointer');
    carry.aim(addressOf('3:9'));
    // Locked by somebody else while it is on its way.
    store.apply({ name: 'lock', edits: [lock] });
    expect(carry.put()).toBeUndefined();
    expect(carry.state()).toEqual({ carried: undefined, last });
    expect(carry.pickUp(block, from, 'keys')).toBe(false);
    expect(carry.state()).toEqual({ carried: undefined, last });
    expect(store.row(block.fixture)?.fixture.addresses).toEqual([1, 101]);
  });

  it('leaves it where it was: by leaving, at its old address, past slot 512, for a reader', () => {
    const { store, link, carry } = open();
    const rig = store.rig();
    carry.pickUp(block, from, 'pointer');
    carry.aim(addressOf('3:9'));
    carry.leave();
    expect(carry.state().last).toEqual({ kind: 'left', fixture: 'f1', from });
    carry.pickUp(block, from, 'keys');
    carry.put();
    expect(carry.state().last).toEqual({ kind: 'left', fixture: 'f1', from });
    carry.pickUp(block, from, 'keys');
    carry.aim(addressOf('1:510'));
    carry.put();
    expect(carry.state().last).toEqual({
      kind: 'no-plan',
      refusal: { code: 'crosses-end', fixture: 'f1', over: 5 },
    });
    link.setStatus({ state: 'read-only', detail: '' });
    expect(carry.pickUp(block, from, 'keys')).toBe(false);
    expect(carry.state().last).toEqual({ kind: 'refused', refusal: { code: 'read-only' } });
    expect(store.rig()).toBe(rig);
  });
});
