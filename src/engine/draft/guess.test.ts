import { expect, it } from 'vitest';
import { countedIds, draftOfEdits } from '#tests/support/random-draft.ts';
import { CELL_LIMIT } from '../model/field.ts';
import { addRows } from './draft-plans.ts';
import { asGuess, isGuess, withoutGuess } from './guess.ts';
import { addMode } from './mode-plans.ts';
import { typeOfDraft } from './type-of-draft.ts';

it('[DR14] a guess is its attribute, and fits its cell', () => {
  for (const attribute of ['Pan', 'Shutter1Strobe', 'What?', 'x'.repeat(CELL_LIMIT)]) {
    expect(isGuess(attribute)).toBe(false);
    const guess = asGuess(attribute);
    expect(isGuess(guess)).toBe(true);
    expect(guess.length).toBeLessThanOrEqual(CELL_LIMIT);
    expect(attribute.startsWith(withoutGuess(guess))).toBe(true);
  }
  expect(asGuess('')).toBe('');
  expect(withoutGuess('What?')).toBe('What?');
});

it('[DR14] a type says the same, whether its attributes are confirmed or not', () => {
  const [guessed, confirmed] = [asGuess, withoutGuess].map((write) => {
    const ids = countedIds();
    const mode = addMode(draftOfEdits([]), 'Basic', ids);
    const rows = ['Pan', 'Dimmer', 'Lamp wobble'].map((attribute) => ({ attribute: write(attribute) }));
    const edits = [...mode, ...addRows(draftOfEdits(mode), 'n1', null, rows, ids)];
    return typeOfDraft(draftOfEdits(edits), null).type;
  });
  expect(guessed).toEqual(confirmed);
  expect(guessed?.modes[0]?.channels.map((channel) => channel.uses[0]?.attribute)).toEqual([
    'Pan',
    'Dimmer',
    'Lamp wobble',
  ]);
});
