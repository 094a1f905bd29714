import { expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import type { ChartReading } from '#engine/draft/chart-reading.ts';
import type { Draft } from '#engine/draft/draft.ts';
import { addMode } from '#engine/draft/mode-plans.ts';
import { typeOfDraft } from '#engine/draft/type-of-draft.ts';
import { slotsOf } from '#engine/type/slots-of.ts';
import { readChart } from '#exchange/chart/read-chart.ts';
import { countedIds, draftOfEdits } from '#tests/support/random-draft.ts';
import { type PasteChoice, pasteEdits } from './paste-edits.ts';

const EMPTY = draftOfEdits([]);
const BELOW: PasteChoice = { mode: undefined, rows: 'below', repeats: new Set() };

function reading(text: string): ChartReading {
  const read = readChart(text);
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
}

/** A draft as `mode: slots attribute, …`. */
const said = (draft: Draft) =>
  draft.modes.map(({ name, rows }) => `${name}: ${rows.map((row) => `${row.slots} ${row.attribute}`).join(', ')}`);

it('makes a mode named after its slots, with every attribute a guess but those that the chart states', () => {
  const pasted = pasteEdits(EMPTY, reading('1 Dimmer\n2 ColorAdd_R\n3 Sparkle'), BELOW, countedIds());
  expect(said(draftOfEdits(pasted.edits))).toEqual(['3 slots: 1 Dimmer ?, 2 ColorAdd_R, 3 Sparkle ?']);
  expect(pasted).toMatchObject({ rows: 3, guesses: 2 });
});

it('fills the open mode, or puts rows below or instead of its own', () => {
  const ids = countedIds();
  const mode = addMode(EMPTY, 'Basic', ids);
  const first = pasteEdits(draftOfEdits(mode), reading('1 Dimmer\n2 Pan'), { ...BELOW, mode: 'n1' }, ids);
  const filled = [...mode, ...first.edits];
  expect(said(draftOfEdits(filled))).toEqual(['Basic: 1 Dimmer ?, 2 Pan ?']);
  const more = (rows: 'below' | 'instead') => {
    const { edits } = pasteEdits(draftOfEdits(filled), reading('3 Tilt\n4 Zoom'), { ...BELOW, mode: 'n1', rows }, ids);
    return said(draftOfEdits([...filled, ...edits]));
  };
  expect(more('below')).toEqual(['Basic: 1 Dimmer ?, 2 Pan ?, 3 Tilt ?, 4 Zoom ?']);
  expect(more('instead')).toEqual(['Basic: 3 Tilt ?, 4 Zoom ?']);
});

it('makes a mode of each chart, under names that no other mode has', () => {
  const chart = reading('Basic mode\n1 Dimmer\n2 Pan\n\nExtended mode\n1 Dimmer\n2 Dimmer fine\n3 Pan');
  const ids = countedIds();
  const once = pasteEdits(EMPTY, chart, BELOW, ids);
  const draft = draftOfEdits(once.edits);
  expect(draft.modes).toHaveLength(2);
  const again = pasteEdits(draft, chart, { ...BELOW, mode: draft.modes[0]?.id }, ids);
  const names = draftOfEdits([...once.edits, ...again.edits]).modes.map((mode) => mode.name);
  expect(new Set(names).size).toBe(4);
});

it('writes rows that come again once, and takes the same slots', () => {
  const cells = Array.from({ length: 4 }, (_, at) => {
    const [red, green, blue] = [2, 3, 4].map((slot) => slot + at * 3);
    return `${red} Pixel ${at + 1} red\n${green} Pixel ${at + 1} green\n${blue} Pixel ${at + 1} blue`;
  });
  const chart = reading(`1 Dimmer\n${cells.join('\n')}`);
  const repeats = new Set(chart.modes[0]?.repeats);
  expect(repeats.size).toBe(1);
  const [row, cell] = [new Set<never>(), repeats].map((taken) => {
    const draft = draftOfEdits(pasteEdits(EMPTY, chart, { ...BELOW, repeats: taken }, countedIds()).edits);
    const { type, troubles } = typeOfDraft(draft, null);
    const mode = present(type.modes[0], 'a mode');
    const slots = slotsOf(type, mode).breaks.flatMap((each) =>
      each.slots.map(({ slot, uses }) => `${slot} ${uses.map((use) => use.attribute)}`),
    );
    return { rows: draft.modes[0]?.rows.length, slots, troubles: troubles.filter(({ where }) => where.of !== 'facts') };
  });
  expect([row?.rows, cell?.rows]).toEqual([13, 4]);
  expect(cell?.slots).toEqual(row?.slots);
  expect(cell?.slots).toHaveLength(13);
  expect([row?.troubles, cell?.troubles]).toEqual([[], []]);
});
