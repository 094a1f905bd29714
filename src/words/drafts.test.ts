import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { newRowEdits } from '#engine/draft/new-row.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import { draftOfEdits, randomDraft } from '#tests/support/random-draft.ts';
import { randomType } from '#tests/support/random-type.ts';
import { draftTroubleSentence } from './drafts.ts';

describe('draftTroubleSentence', () => {
  it('[DR15] says of every trouble of any draft where it is and what to do, without a gap in the sentence', () => {
    const kinds = new Set<string>();
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const draft = randomDraft(rng);
      for (const trouble of typeOfDraft(draft, randomType(rng)).troubles) {
        kinds.add(trouble.kind);
        const sentence = draftTroubleSentence(trouble, draft);
        expect(sentence).toMatch(/\.$/);
        expect(sentence).not.toMatch(/undefined|null|NaN|row 0|\[object/);
      }
    }
    expect(kinds.size).toBeGreaterThan(18);
  });

  it('[DR15] names rows by their number and name', () => {
    const draft = draftOfEdits([
      { of: 'facts', field: 'maker', value: 'Amberline' },
      { of: 'facts', field: 'model', value: 'Wash 7' },
      { of: 'facts', field: 'power', value: '1,200 W' },
      { of: 'mode', mode: 'm', field: 'order', value: 1 },
      { of: 'mode', mode: 'm', field: 'name', value: 'Basic' },
      ...newRowEdits('m', { id: 'a', order: 1, slots: '1-2', name: 'Pan' }),
      ...newRowEdits('m', { id: 'b', order: 2, slots: '2', attribute: 'Tilt', ranges: '0-100 Slow' }),
    ]);
    const { troubles } = typeOfDraft(draft, null);
    expect(troubles.map((trouble) => draftTroubleSentence(trouble, draft))).toEqual([
      'Power: “1,200 W” cannot be read. Write watts, such as 480, without a mark for thousands.',
      'Mode “Basic”, row 2 “Tilt”: values 101 to 255 are not named in its ranges. Check them with the manual.',
      'Mode “Basic”, row 2 “Tilt”: slot 2 of break 1 is taken by row 1 “Pan” too. Check them with the manual.',
    ]);
  });
});
