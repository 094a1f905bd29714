import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { hostileText } from '#tests/support/hostile-text.ts';
import { guardText, unguardText } from './formula-guard.ts';

describe('formula guard', () => {
  it('is undone exactly, and leaves no text that starts a formula', () => {
    const rng = seededRng(21);
    for (let i = 0; i < 20_000; i++) {
      const text = hostileText(rng);
      expect(unguardText(guardText(text))).toBe(text);
      // OWASP, CSV Injection: the characters that start a formula, and their full-width forms.
      expect(guardText(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
    }
  });

  it.each([
    ['=1+1', "'=1+1"],
    ["'=1+1", "''=1+1"],
    ["'quoted'", "'quoted'"],
    ['LX 1', 'LX 1'],
    ['', ''],
  ])('writes %j as %j', (text, guarded) => {
    expect(guardText(text)).toBe(guarded);
  });
});
