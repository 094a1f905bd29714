import { expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import { slotsOf } from '#engine/type/slots-of.ts';
import { randomDraft } from '#tests/support/random-draft.ts';
import { slotsOfDraft } from './draft-slots.ts';

/** Breaks as `slot: coarse and fine bytes`, up to the last slot of a universe. */
interface Plain {
  readonly break: number;
  readonly slots: readonly { readonly slot: number; readonly uses: readonly { byte: number; of: number }[] }[];
}

const plain = (breaks: readonly Plain[]) =>
  breaks.flatMap((each) =>
    each.slots
      .filter(({ slot, uses }) => slot <= 512 && uses.length > 0)
      .map(({ slot, uses }) => `${each.break}:${slot} ${uses.map(({ byte, of }) => `${byte}/${of}`).toSorted()}`),
  );

it('shows the slots that the type has, whatever stands in the draft', () => {
  let seen = 0;
  for (let seed = 1; seed <= 600; seed++) {
    const draft = randomDraft(seededRng(seed));
    const { type } = typeOfDraft(draft, null);
    for (const [at, mode] of draft.modes.entries()) {
      const own = type.modes[at];
      if (own === undefined) continue;
      const shown = plain(slotsOfDraft(mode));
      seen += shown.length;
      expect(shown, `seed ${seed}, mode ${mode.id}`).toEqual(plain(slotsOf(type, own).breaks));
    }
  }
  expect(seen).toBeGreaterThan(300);
});
