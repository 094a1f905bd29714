import { describe, expect, it } from 'vitest';
import { fixtureId } from '#engine/model/ids.ts';
import { addressOf } from '#tests/support/rig-shorthand.ts';
import { landingMark, landingSentence } from './ribbons.ts';

describe('words of a block on its way', () => {
  const at = addressOf('2:501');
  const meets = [fixtureId('a'), fixtureId('b')];

  it('say the address, and what is met by count and first name', () => {
    const free = { at, slots: 4, over: 0, meets: [] };
    expect(landingSentence('Bar · 1', free, '')).toBe('Bar · 1 would get 2:501–504: the slots are free.');
    expect(landingMark(free)).toBe('501');
    const met = { ...free, slots: 1, meets };
    expect(landingSentence('Bar · 1', met, 'Bar · 2')).toBe(
      'Bar · 1 would get 2:501: it would meet 2 units, first Bar · 2.',
    );
    expect(landingMark(met)).toBe('501 meets 2');
  });

  it('say what lies past slot 512 before all else', () => {
    const past = { at, slots: 16, over: 4, meets };
    expect(landingSentence('Bar · 1', past, 'Bar · 2')).toBe(
      'Bar · 1 would get 2:501–512: 4 slots would lie past slot 512, so it cannot be put there; it would meet 2 units, first Bar · 2.',
    );
    expect(landingMark(past)).toBe('501 past 512');
  });
});
