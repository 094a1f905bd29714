import { describe, expect, it } from 'vitest';
import { assert } from '#base/assert.ts';
import { createPlaces } from './places.ts';

describe('createPlaces', () => {
  it('gives each person so many and all of them so many, and again what was given back', () => {
    const places = createPlaces({ each: 2, all: 3 });
    const first = places.take('ada');
    assert(first.ok, 'the first place is free');
    expect(places.take('ada').ok).toBe(true);
    expect(places.take('ada')).toEqual({ ok: false, error: 'each' });
    expect(places.take('ben').ok).toBe(true);
    expect(places.take('ben')).toEqual({ ok: false, error: 'all' });
    first.value();
    expect(places.take('ben').ok).toBe(true);
    expect(places.take('cem')).toEqual({ ok: false, error: 'all' });
  });
});
