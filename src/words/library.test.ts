import { describe, expect, it } from 'vitest';
import { FACT_FIELDS } from '#engine/draft/draft.ts';
import { LASER_CLASSES, NO_HAZARDS } from '#engine/model/fixture-type.ts';
import type { TypeUse } from '#wire/library.ts';
import { factChangeSentence, factText, hazardWords, lookedSentence, modeWord } from './library.ts';

describe('what is said of a library', () => {
  it('says every fact that changed, with its unit', () => {
    const sentences = FACT_FIELDS.map((fact) => factChangeSentence({ fact, before: '', after: '2' }));
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*: .+, before not stated\.$/);
    expect(new Set(sentences).size).toBe(FACT_FIELDS.length);
    expect([factText('weight', '7.5'), factText('switches', 'B'), factText('connector', '')]).toEqual([
      '7.5 kg',
      'hold the address less 1',
      'not stated',
    ]);
  });

  it('names every class of laser, and what else can hurt', () => {
    const said = LASER_CLASSES.map((laser) => hazardWords({ ...NO_HAZARDS, laser, heat: true }).join(', '));
    expect(new Set(said).size).toBe(LASER_CLASSES.length);
    for (const words of said) expect(words).toMatch(/^laser.+, hot surfaces$/);
    expect(hazardWords(NO_HAZARDS)).toEqual([]);
  });

  it('says how far a look at the rigs went', () => {
    const said = (uses: number, looked: number, rigs: number) =>
      lookedSentence({
        uses: Array.from({ length: uses }, (): TypeUse => ({ rigId: '', rigName: '', modes: [] })),
        looked,
        rigs,
      });
    expect(said(0, 0, 0)).toBe('The crew has no rigs yet.');
    expect(said(0, 1, 1)).toBe('No rig of the crew uses it.');
    expect(said(1, 1, 1)).toBe('All rigs of the crew were looked at.');
    expect(said(0, 200, 1500)).toBe(
      'Only the 200 rigs that changed last, of 1,500 rigs, were looked at: none of them uses it.',
    );
  });

  it('counts the slots of a mode by its breaks', () => {
    expect(modeWord({ name: 'Wide', footprints: [1, 4], firmware: [] })).toBe('Wide (1 + 4 slots)');
  });
});
