import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { attributeNames, suggestAttributes } from './attribute-names.ts';
import { ATTRIBUTE_RULES, WORD_MEANINGS } from './attribute-words.ts';
import { attributeFacts } from './attributes.ts';

describe('attribute names', () => {
  it('are the standard’s, each once', () => {
    expect(attributeNames.filter((name) => attributeFacts(name) === undefined)).toEqual([]);
    expect(new Set(attributeNames).size).toBe(attributeNames.length);
  });

  it('are all that words lead to', () => {
    const led = ATTRIBUTE_RULES.map((rule) => rule.attribute.replace('#', '1')).filter((name) => name !== '');
    expect(led.filter((name) => !attributeNames.includes(name))).toEqual([]);
  });

  it('have no rule that asks for a word nobody can write', () => {
    const meant = new Set([...WORD_MEANINGS.values()].flat());
    expect(ATTRIBUTE_RULES.flatMap((rule) => rule.words).filter((word) => !meant.has(word))).toEqual([]);
  });
});

describe('suggestAttributes', () => {
  it.each([
    ['dimmer', 'Dimmer'],
    ['schw', 'Pan'],
    ['gobo 2', 'Gobo2'],
    ['gobo rotation', 'Gobo1PosRotate'],
    ['ColorAdd_RY', 'ColorAdd_RY'],
    ['yellow', 'ColorAdd_Y'],
    ['shutter1s', 'Shutter1Strobe'],
    ['pris', 'Prism1'],
  ])('begins with the best one: %s', (text, best) => {
    expect(suggestAttributes(text)[0]).toBe(best);
  });

  it('offers both ways to mix a colour that may be added or taken away', () => {
    expect(suggestAttributes('Cyan').slice(0, 2)).toEqual(['ColorAdd_C', 'ColorSub_C']);
  });

  it('gives twelve names of the standard at most, each once, and none for nothing', () => {
    expect(suggestAttributes('')).toEqual([]);
    expect(suggestAttributes(' · ')).toEqual([]);
    const rng = seededRng(12);
    for (let round = 0; round < 300; round++) {
      const name = rng.pick(attributeNames);
      const names = suggestAttributes(name.slice(0, 1 + rng.int(name.length)));
      expect(names.length).toBeGreaterThan(0);
      expect(names.length).toBeLessThanOrEqual(12);
      expect(new Set(names).size).toBe(names.length);
      expect(names.filter((each) => attributeFacts(each) === undefined)).toEqual([]);
    }
  });
});
