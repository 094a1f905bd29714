import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { tableOf } from '#base/table.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { applyEdits } from './apply-edits.ts';
import { type CARD_KINDS, isCardKey, makeCard, SETUP_KEY, tickKey } from './card.ts';
import { recordOf } from './record.ts';
import { EMPTY_RIG } from './rig.ts';

const card = (kind: (typeof CARD_KINDS)[number], key: string, cells: Record<string, string | number>) => {
  const made = makeCard(kind, key, cells);
  if (made === undefined) throw new Error('no card');
  return made;
};

describe('the record', () => {
  it('[CD8] any cards at all have a record, the same for the same cards', () => {
    for (let seed = 0; seed < 300; seed++) {
      const { cards } = applyEdits(EMPTY_RIG, randomPlan(seededRng(seed), 3, 60).edits);
      const record = recordOf(cards);
      expect(recordOf(cards)).toBe(record);
      const count = record.faults.length + record.hires.length + record.readings.length + record.swaps.length;
      expect(count).toBeLessThanOrEqual(cards.size);
      for (const { key } of record.ticks.values()) expect(isCardKey('tick', key)).toBe(true);
    }
  });

  it('[CD8] nobody has said anything of an empty rig', () => {
    const record = recordOf(EMPTY_RIG.cards);
    expect(record.house).toEqual({ name: '', address: '', entry: '', width: null, depth: null, grid: null, notes: '' });
    expect(record.places.size + record.outlets.size + record.ticks.size).toBe(0);
  });

  it('[CD9] what happened comes in the order of its days, stock and people in natural order, and a card that is nothing is not there', () => {
    const record = recordOf(
      tableOf([
        card('venue', SETUP_KEY, { name: 'The Kettle', width: 12.5, depth: 'deep' }),
        card('place', 'bar 1', { position: 'Bar 1', first: 'stage-left-first', trim: 7.2 }),
        card('place', 'bar 2', { trim: 7 }),
        card('outlet', 'fly 1', { name: 'Fly 1', carries: 'dmx', to: 'Rack 2' }),
        card('spare', 'a', { type: 'Wash 10', count: 2 }),
        card('spare', 'b', { type: 'Wash 2' }),
        card('contact', 'c', { name: 'Ona Reeve', role: 'house electrician' }),
        card('fault', 'd', { unit: 'f1', what: 'no tilt', seenOn: '2026-11-20', state: 'mended', done: 'belt' }),
        card('fault', 'e', { unit: 'f1', what: 'dim', seenOn: '2026-11-02' }),
        card('fault', 'f', { unit: 'f1', seenOn: '2026-11-03' }),
        card('reading', 'g', { unit: 'f1', of: 'lamp', hours: 412, on: '2026-11-20' }),
        card('reading', 'h', { unit: 'f1', of: 'mood', on: '2026-11-20' }),
        card('swap', 'i', { unit: 'f1', out: 'sn 7', in: 'sn 9' }),
        card('hire', 'j', { item: 'Hazer', due: '2026-12-01' }),
        card('tick', tickKey('abc', 'f1 set-address'), { state: 'done', by: 'Ona Reeve' }),
      ]),
    );
    expect(record.house).toMatchObject({ name: 'The Kettle', width: 12.5, depth: null });
    expect([...record.places.keys()]).toEqual(['bar 1']);
    expect(record.outlets.get('fly 1')).toMatchObject({ carries: 'dmx', to: 'Rack 2' });
    expect(record.spares.map(({ type, count }) => [type, count])).toEqual([
      ['Wash 2', null],
      ['Wash 10', 2],
    ]);
    expect(record.faults.map(({ what, state }) => [what, state])).toEqual([
      ['dim', 'open'],
      ['no tilt', 'mended'],
    ]);
    expect(record.readings.map(({ of, hours }) => [of, hours])).toEqual([['lamp', 412]]);
    expect(record.hires).toMatchObject([{ item: 'Hazer', count: 1, returned: '' }]);
    expect(record.ticks.get('abc f1 set-address')).toMatchObject({ state: 'done', by: 'Ona Reeve' });
    expect(record.swaps).toMatchObject([{ unit: 'f1', out: 'sn 7', in: 'sn 9' }]);
    expect(record.contacts).toMatchObject([{ name: 'Ona Reeve' }]);
  });

  it('[CD7] there is one house to a rig, and a tick is known by what it ticks', () => {
    expect(isCardKey('venue', SETUP_KEY)).toBe(true);
    expect(isCardKey('venue', 'other')).toBe(false);
    expect(isCardKey('tick', tickKey('0f3a', 'Kx_9 take-down'))).toBe(true);
    for (const key of ['', ' ', 'a ', `${'x'.repeat(2000)}y`, 'half \ud800'])
      expect(isCardKey('tick', key)).toBe(false);
    expect(isCardKey('fault', 'a/b')).toBe(false);
    expect(isCardKey('place', 'Bar 1')).toBe(false);
  });
});
