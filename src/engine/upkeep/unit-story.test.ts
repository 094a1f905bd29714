import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import { recordOf } from '../model/record.ts';
import { EMPTY_RIG } from '../model/rig.ts';
import { hireState } from './hires-due.ts';
import { readingSteps, unitStory } from './unit-story.ts';

const reading = (id: string, on: string, cells: Record<string, string | number>) =>
  setCard('reading', id, { unit: 'f1', on, ...cells });

describe('the readings of a unit', () => {
  it('[UK7] say how much came since the one before of their kind; nothing across a swap', () => {
    const { cards } = applyEdits(EMPTY_RIG, [
      ...reading('a', '2026-09-01', { of: 'lamp', hours: 100 }),
      ...reading('b', '2026-09-02', { of: 'service', hours: 900 }),
      ...reading('c', '2026-10-01', { of: 'lamp', hours: 160.5 }),
      ...reading('d', '2026-10-02', { of: 'firmware', firmware: '1.2' }),
      ...reading('e', '2026-10-09', { of: 'firmware', firmware: '1.4' }),
      ...setCard('swap', 's', { unit: 'f1', on: '2026-11-01' }),
      ...setCard('swap', 't', { unit: 'f2', on: '2026-09-15' }),
      ...reading('f', '2026-11-20', { of: 'lamp', hours: 3 }),
      ...reading('g', '2026-11-21', { of: 'lamp', hours: 10 }),
      ...reading('h', '2026-11-22', { of: 'firmware', firmware: '1.6' }),
      ...setCard('reading', 'z', { unit: 'f2', of: 'lamp', hours: 5, on: '2026-09-15' }),
    ]);
    const said = readingSteps(recordOf(cards), 'f1').map((step) =>
      [step.reading.id, step.hours, step.before].join(' '),
    );
    expect(said).toEqual(['a  ', 'b  ', 'c 60.5 ', 'd  ', 'e  1.2', 'f  ', 'g 7 ', 'h  ']);
  });
});

describe('the story of a unit', () => {
  it('[UK8] has all that is of it and nothing else, in the order of days', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { cards } = applyEdits(EMPTY_RIG, randomPlan(seededRng(seed), 3, 120).edits);
      const record = recordOf(cards);
      const story = unitStory(record, 'f1');
      const own = [...record.faults, ...record.swaps, ...record.readings, ...record.hires].filter(
        ({ unit }) => unit === 'f1',
      );
      expect(story.length).toBe(own.length);
      expect(new Set(story.map(({ kind, id }) => `${kind} ${id}`)).size).toBe(own.length);
      const days = story.map(({ on }) => on);
      expect(days).toEqual([...days].sort());
    }
  });
});

describe('a hired item', () => {
  it('[UK9] is overdue from the day after it is due, until it is back', () => {
    const state = (due: string, returned: string, today = '2026-11-25') => hireState({ due, returned }, today);
    expect(state('2026-11-25', '')).toBe('due');
    expect(state('2026-11-24', '')).toBe('overdue');
    expect(state('2026-11-24', '2026-11-26')).toBe('returned');
    expect(state('when it is over', '')).toBe('no-day');
    expect(state('2026-11-24', '', '')).toBe('no-day');
  });
});
