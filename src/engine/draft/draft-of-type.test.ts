import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { countedIds, draftOfEdits } from '#tests/support/random-draft.ts';
import { randomType } from '#tests/support/random-type.ts';
import type { FixtureType, TypeMode } from '../model/fixture-type.ts';
import { canonicalText } from '../type/content-hash.ts';
import { GENERIC_TYPES } from '../type/generic-types.ts';
import { slotsOf } from '../type/slots-of.ts';
import { draftOfType } from './draft-of-type.ts';
import { stopsPublishing } from './draft-trouble.ts';
import { openChart } from './open-chart.ts';
import { typeOfDraft } from './type-of-draft.ts';

const types = (count: number) => Array.from({ length: count }, (_, at) => randomType(seededRng(at + 1)));

/** What each slot of each break does: attributes and bytes, whatever the cells are called. */
function slotTexts(type: FixtureType, mode: TypeMode) {
  const { breaks, virtual, unreached } = slotsOf(type, mode);
  const slots = breaks.map((each) => [
    each.break,
    each.slots.map(({ uses }) => uses.map((use) => `${use.attribute} ${use.byte}/${use.of}`).sort()),
  ]);
  return { slots, virtual: virtual, unreached: unreached.length };
}

function opened(type: FixtureType) {
  const ids = countedIds();
  const edits = [...draftOfType(type, ids)];
  const lost = draftOfEdits(edits).modes.map((mode, at) => {
    if (mode.kept === '') return null;
    const chart = openChart(mode.id, present(type.modes[at], 'no mode'), type, ids);
    edits.push(...chart.edits);
    return chart.lost;
  });
  return { draft: draftOfEdits(edits), lost };
}

/** The type with its copies at even distances, mostly the same in every break. */
function evenly(rng: Rng, type: FixtureType): FixtureType {
  const common = 1 + rng.int(70);
  const lines = [1, 2, 3].slice(0, 1 + rng.int(3)).map((number) => {
    return { break: number, first: 1 + rng.int(20), step: rng.int(3) === 0 ? 1 + rng.int(70) : common };
  });
  let copies = 0;
  const parts = type.parts.map((part) => {
    if (part.copy === null) return part;
    const starts = lines.map((line) => ({ break: line.break, slot: line.first + copies * line.step }));
    copies += 1;
    return { ...part, copy: { ...part.copy, starts } };
  });
  return { ...type, parts };
}

describe('draftOfType', () => {
  it('[DR1] a draft of a type with all modes kept says the same type', () => {
    for (const [at, type] of [...types(150), ...GENERIC_TYPES].entries()) {
      const draft = draftOfEdits(draftOfType(type, countedIds()));
      expect(canonicalText(typeOfDraft(draft, type).type), `seed ${at + 1}`).toBe(canonicalText(type));
    }
  });

  it('[DR1] so does one whose texts are longer than a cell', () => {
    const [type] = types(1);
    const long = { ...present(type, 'no type'), description: `${'x'.repeat(1999)}😀😀` };
    const draft = draftOfEdits(draftOfType(long, countedIds()));
    expect(draft.facts.description).toBe('x'.repeat(1999));
    expect(typeOfDraft(draft, long).type.description).toBe(long.description);
  });

  it('[DR2] parts that only other modes reach go with them', () => {
    const bar = present(
      GENERIC_TYPES.find((type) => type.model === 'RGB bar, 4 cells'),
      'no bar',
    );
    const ids = countedIds();
    const draft = draftOfEdits(draftOfType(bar, ids));
    const one = { ...draft, modes: draft.modes.slice(0, 1) };
    expect(typeOfDraft(one, bar).type.parts.map((part) => part.name)).not.toContain('Body behind intensity');
    expect(typeOfDraft(one, bar).type.parts.map((part) => part.name)).toContain('Body cell 4');
  });
});

describe('openChart', () => {
  it('[DR10] a chart has the slots of its mode: footprints, attributes and bytes', () => {
    for (const [at, type] of types(150).entries()) {
      const { draft, lost } = opened(type);
      const after = typeOfDraft(draft, type).type;
      for (const [place, mode] of type.modes.entries()) {
        const before = slotTexts(type, mode);
        const now = slotTexts(after, present(after.modes[place], 'no mode'));
        expect(now, `seed ${at + 1}, mode ${place}`).toEqual({ ...before, unreached: 0 });
        expect(lost[place]?.channels, `seed ${at + 1}, mode ${place}`).toBe(before.unreached);
      }
    }
  });

  it('[DR10] so has one whose cells lie at one distance, in one break or several', () => {
    let repeats = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const type = evenly(rng, randomType(rng));
      const { draft } = opened(type);
      repeats += draft.modes.flatMap((mode) => mode.repeats).length;
      const after = typeOfDraft(draft, type).type;
      for (const [place, mode] of type.modes.entries()) {
        const now = slotTexts(after, present(after.modes[place], 'no mode'));
        expect(now, `seed ${seed}, mode ${place}`).toEqual({ ...slotTexts(type, mode), unreached: 0 });
      }
    }
    expect(repeats).toBeGreaterThan(30);
  });

  it('[DR10] of the built-in types nothing stops publishing, and cells become repeats', () => {
    for (const type of GENERIC_TYPES) {
      const { draft } = opened(type);
      const { type: after, troubles } = typeOfDraft(draft, type);
      expect(troubles.filter(stopsPublishing), type.model).toEqual([]);
      for (const [place, mode] of type.modes.entries()) {
        expect(slotTexts(after, present(after.modes[place], 'no mode'))).toEqual(slotTexts(type, mode));
      }
    }
    const bar = present(
      GENERIC_TYPES.find((type) => type.model === 'RGB bar, 8 cells'),
      'no bar',
    );
    const { draft } = opened(bar);
    expect(draft.modes.map((mode) => [mode.rows.length, mode.repeats.map((each) => [each.count, each.step])])).toEqual([
      [3, [['8', '']]],
      [4, [['8', '']]],
    ]);
  });

  it('[DR11] says what a chart has no place for', () => {
    const rgb = present(
      GENERIC_TYPES.find((type) => type.model === 'RGB'),
      'no RGB',
    );
    const none = { conditions: 0, uses: 0, fine: 0, settings: 0, channels: 0 };
    expect(opened(rgb).lost).toEqual([
      { ...none, physical: 3 },
      { ...none, physical: 4 },
    ]);
  });

  it('[DR12] defaults, highlights, functions and ranges on 8 bit steps come through', () => {
    for (const [at, type] of types(100).entries()) {
      const { draft } = opened(type);
      const once = typeOfDraft(draft, type).type;
      const { draft: again } = opened(once);
      expect(canonicalText(typeOfDraft(again, once).type), `seed ${at + 1}`).toBe(canonicalText(once));
    }
  });

  it('[DR11] a mode with more channels than a chart has rows says how many are left out, and is still one call', () => {
    const rgb = present(
      GENERIC_TYPES.find((type) => type.model === 'RGB'),
      'no RGB',
    );
    const [red] = present(rgb.modes[0], 'no mode').channels;
    const channels = Array.from({ length: 2000 }, (_, at) => ({ ...present(red, 'no channel'), offsets: [1 + at] }));
    const mode = { ...present(rgb.modes[0], 'no mode'), channels };
    const { edits, lost } = openChart('m', mode, { ...rgb, modes: [mode] }, countedIds());
    expect(lost.channels).toBe(500);
    expect(edits.length).toBeLessThan(20_000);
  });
});
