import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyDraftEdits } from '#document/draft/apply-draft-edits.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import { readDraft, watchDraft } from '#document/draft/draft-reader.ts';
import { countedIds, draftOfEdits, randomDraft, randomDraftEdits } from '#tests/support/random-draft.ts';
import { randomType } from '#tests/support/random-type.ts';
import { canonicalText } from '../type/content-hash.ts';
import { footprintsOfMode } from '../type/slots-of.ts';
import { defaultOf } from '../type/value-spans.ts';
import type { Draft, DraftEdit, DraftRepeat, DraftRow, FactField } from './draft.ts';
import { draftOfType } from './draft-of-type.ts';
import { stopsPublishing } from './draft-trouble.ts';
import { newRepeatEdits, newRowEdits } from './new-row.ts';
import { typeOfDraft } from './type-of-draft.ts';

type RowCells = Partial<Omit<DraftRow, 'id' | 'order'>>;

/** A draft of one mode `m` with rows `r1`, `r2` … that is otherwise fit to publish. */
function chart(rows: readonly RowCells[], repeats: readonly DraftRepeat[] = []): Draft {
  return draftOfEdits([
    { of: 'facts', field: 'maker', value: 'Amberline' },
    { of: 'facts', field: 'model', value: 'Wash 7' },
    { of: 'mode', mode: 'm', field: 'order', value: 1 },
    { of: 'mode', mode: 'm', field: 'name', value: 'Basic' },
    ...repeats.flatMap((repeat) => newRepeatEdits('m', repeat)),
    ...rows.flatMap((row, at) => newRowEdits('m', { ...row, id: `r${at + 1}`, order: at + 1 })),
  ]);
}

const read = (draft: Draft) => {
  const { type, troubles } = typeOfDraft(draft, null);
  const mode = type.modes[0];
  const kinds = troubles.map((trouble) => {
    const { where } = trouble;
    const place = where.of === 'row' ? `${where.row}.${where.field}` : where.of === 'repeat' ? where.repeat : where.of;
    return `${trouble.kind} ${place}${stopsPublishing(trouble) ? '!' : ''}`;
  });
  const footprints = mode === undefined ? [] : footprintsOfMode(type, mode);
  return { type, troubles, kinds, footprints, channels: mode?.channels ?? [] };
};

const facts = (values: Partial<Record<FactField, string>>) =>
  typeOfDraft(
    draftOfEdits(
      Object.entries(values).map(([field, value]): DraftEdit => ({ of: 'facts', field: field as FactField, value })),
    ),
    null,
  );

describe('typeOfDraft', () => {
  it('[DR3] any draft gives a type, and one that may be published has a maker, a model and modes that take slots', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const draft = randomDraft(rng);
      const { type, troubles } = typeOfDraft(draft, rng.pick([null, randomType(rng)]));
      expect(canonicalText(type)).not.toBe('');
      expect(type.modes).toHaveLength(draft.modes.length);
      if (troubles.some(stopsPublishing)) continue;
      expect(type.maker).not.toBe('');
      for (const mode of type.modes)
        expect(Math.max(...footprintsOfMode(type, mode)), `seed ${seed}`).toBeGreaterThan(0);
    }
  });

  it('[DR13] a draft that is kept up says what the same draft read anew says', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const rng = seededRng(seed);
      const base = randomType(rng);
      const doc = createDraftDoc(draftOfType(base, countedIds('m')));
      const reader = watchDraft(doc);
      for (let step = 0; step < 20; step++) {
        applyDraftEdits(doc, randomDraftEdits(rng, 8), 'me');
        expect(typeOfDraft(reader.draft(), base), `seed ${seed}`).toEqual(typeOfDraft(readDraft(doc), base));
      }
    }
  });

  it('[DR3] an empty draft has no maker, no model and no mode', () => {
    const { troubles } = typeOfDraft(draftOfEdits([]), null);
    expect(troubles).toEqual([
      { where: { of: 'facts', field: 'maker' }, kind: 'missing' },
      { where: { of: 'facts', field: 'model' }, kind: 'missing' },
      { where: { of: 'type' }, kind: 'no-mode' },
    ]);
    expect(troubles.every(stopsPublishing)).toBe(true);
  });

  it('[DR4] rows take the slots they name, coarse first; a row without is virtual', () => {
    const { kinds, footprints, channels } = read(
      chart([
        { slots: '1-2', attribute: 'Pan' },
        { slots: '3,7', attribute: 'Tilt' },
        { slots: '6 5', attribute: 'Zoom' },
        { slots: '', attribute: 'Dimmer', part: 'Head' },
        { slots: '2', break: '2', attribute: 'Color1', part: 'Changer' },
      ]),
    );
    expect(kinds).toEqual([]);
    expect(footprints).toEqual([7, 2]);
    expect(channels.map((each) => [each.part, each.break, each.offsets, each.resolution])).toEqual([
      ['Body', 1, [1, 2], 2],
      ['Body', 1, [3, 7], 2],
      ['Body', 1, [6, 5], 2],
      ['Head', 1, [], 1],
      ['Changer', 2, [2], 1],
    ]);
  });

  it.each(['0', '1-5', 'x', '9-8', '1,2,3,4,5', '-3', '1.5'])('[DR4] %s names no slots', (slots) => {
    expect(
      read(
        chart([
          { slots: '1', attribute: 'Pan' },
          { slots, attribute: 'Tilt' },
        ]),
      ).kinds,
    ).toEqual(['unreadable-slots r2.slots!']);
  });

  it('[DR5] a slot taken twice names both rows, and slots past 512 their row', () => {
    const { troubles } = read(
      chart([
        { slots: '1-2', name: 'A' },
        { slots: '3', name: 'B' },
        { slots: '2-3', name: 'C' },
      ]),
    );
    expect(
      troubles.map((each) => 'rows' in each && [each.rows, each.kind === 'slot-taken-twice' && each.first]),
    ).toEqual([
      [['r1', 'r3'], 2],
      [['r2', 'r3'], 3],
    ]);
    expect(
      read(
        chart([
          { slots: '1', name: 'A' },
          { slots: '513', name: 'B' },
        ]),
      ).kinds,
    ).toEqual(['past-512 r2.slots!']);
  });

  it('[DR5] rows alike and rows that say nothing are warned of; a mode of virtual rows stops', () => {
    expect(
      read(
        chart([
          { slots: '1', name: 'Pan' },
          { slots: '2', attribute: 'pan' },
        ]),
      ).kinds,
    ).toEqual(['rows-alike r2.attribute']);
    expect(read(chart([{ slots: '1' }])).kinds).toEqual(['nothing-said r1.attribute']);
    expect(read(chart([{ name: 'A' }])).kinds).toEqual(['no-usable-mode type!', 'only-virtual mode!']);
    expect(read(chart([{ slots: '5000', name: 'A' }])).kinds).toEqual(['no-usable-mode type!', 'past-512 r1.slots!']);
    expect(read(chart([])).kinds).toEqual(['no-usable-mode type!', 'mode-without-slots mode!']);
  });

  it('[DR6] a repeat comes count times, each cell as far on as its rows span, or as its step says', () => {
    const rows = [
      { slots: '1', attribute: 'Dimmer' },
      { slots: '2', attribute: 'ColorAdd_R', repeat: 'p' },
      { slots: '3-4', attribute: 'ColorAdd_G', repeat: 'p' },
    ];
    const pixels = read(chart(rows, [{ id: 'p', name: 'Pixel', count: '4', step: '' }]));
    expect([pixels.kinds, pixels.footprints]).toEqual([[], [13]]);
    expect(pixels.channels.map((each) => [each.part, each.break, each.offsets])).toEqual([
      ['Body', 1, [1]],
      ['Pixel', 'of-copy', [1]],
      ['Pixel', 'of-copy', [2, 3]],
    ]);
    const copies = pixels.type.parts.flatMap((part) => (part.copy === null ? [] : [[part.name, part.copy.starts]]));
    expect(copies.slice(0, 2)).toEqual([
      ['Pixel 1', [{ break: 1, slot: 2 }]],
      ['Pixel 2', [{ break: 1, slot: 5 }]],
    ]);
    expect(read(chart(rows, [{ id: 'p', name: '', count: '4', step: '10' }])).footprints).toEqual([34]);
    expect(read(chart(rows, [{ id: 'p', name: '', count: '4', step: '2' }])).kinds).toEqual([
      'slot-taken-twice r3.slots!',
    ]);
    expect(read(chart(rows, [{ id: 'p', name: '', count: 'x', step: '' }])).kinds).toEqual(['unreadable-count p!']);
    expect(read(chart(rows, [{ id: 'p', name: '', count: '200', step: '' }])).kinds).toEqual([
      'past-512 r2.slots!',
      'past-512 r3.slots!',
    ]);
    expect(read(chart(rows)).kinds).toEqual(['repeat-gone r2.repeat', 'repeat-gone r3.repeat']);
  });

  it('[DR6] cells with rows in two breaks start in each', () => {
    const { footprints, channels, type } = read(
      chart(
        [
          { slots: '1', attribute: 'Dimmer', repeat: 'p' },
          { slots: '3-4', break: '2', attribute: 'Color1', repeat: 'p' },
        ],
        [{ id: 'p', name: 'Lamp', count: '4', step: '' }],
      ),
    );
    expect(footprints).toEqual([4, 10]);
    expect(channels.map((each) => each.break)).toEqual([1, 2]);
    expect(type.parts.find((part) => part.name === 'Lamp 3')?.copy?.starts).toEqual([
      { break: 1, slot: 3 },
      { break: 2, slot: 7 },
    ]);
  });

  it('[DR7] ranges are in 8 bit steps, widened to whole coarse steps; brackets start a function', () => {
    const ranges = '0-10 Closed\n11 - 127: Strobe, slow to fast [Shutter1Strobe]\n128..250 Open';
    const { kinds, channels } = read(
      chart([{ slots: '1-2', attribute: 'Shutter1', ranges, default: '128/1', highlight: '65535' }]),
    );
    expect(kinds).toEqual(['ranges-gap r1.ranges']);
    const [channel] = channels;
    expect(
      channel?.uses[0]?.functions.map((each) => [
        each.attribute,
        each.from,
        each.ranges.map((one) => [one.name, one.from]),
      ]),
    ).toEqual([
      ['Shutter1', 0, [['Closed', 0]]],
      [
        'Shutter1Strobe',
        11 * 256,
        [
          ['Strobe, slow to fast', 11 * 256],
          ['Open', 128 * 256],
          ['', 251 * 256],
        ],
      ],
    ]);
    expect(channel === undefined ? null : [defaultOf(channel), channel.highlight]).toEqual([128 * 257, 65535]);
  });

  it('[DR7] values that cannot be read stop publishing', () => {
    expect(
      read(chart([{ slots: '1', name: 'A', default: '300', highlight: 'full', ranges: 'all\n0-255 x' }])).kinds,
    ).toEqual(['unreadable-range r1.ranges!', 'value-too-high r1.default!', 'unreadable-value r1.highlight!']);
  });

  it('[DR8] facts are read with their units, and what is no fact is named', () => {
    const { type } = facts({
      weight: '7,5 kg',
      power: '1.2 kW',
      powerFactor: '0.95',
      voltage: '100–240 V AC, 50/60 Hz',
      perBreaker: '16 A C: 5\nB16: 8 at 230 V',
      switches: 'b',
      laser: '3b',
      fog: 'yes',
    });
    expect(type.physical).toEqual({
      weight: 7.5,
      power: 1200,
      powerFactor: 0.95,
      voltage: { low: 100, high: 240 },
      connector: '',
      perBreaker: [
        { breaker: '16 A C', most: '5' },
        { breaker: 'B16', most: '8 at 230 V' },
      ],
    });
    expect([type.settings.switches, type.hazards.laser, type.hazards.fog, type.hazards.strobe]).toEqual([
      'B',
      '3B',
      true,
      false,
    ]);
    expect(facts({ voltage: '230' }).type.physical.voltage).toEqual({ low: 230, high: 230 });
  });

  it('[DR8] a thousand with a separator is no number, and a hazard that cannot be read counts as there', () => {
    const { type, troubles } = facts({
      power: '1,200 W',
      weight: '15 lb',
      voltage: '240-100',
      laser: 'IV',
      strobe: 'maybe',
    });
    expect(type.physical).toMatchObject({ power: null, weight: null, voltage: null });
    expect([type.hazards.laser, type.hazards.strobe]).toEqual(['unknown', true]);
    expect(troubles.filter((each) => each.kind === 'unreadable-fact' && stopsPublishing(each))).toHaveLength(5);
  });

  it('[DR9] modes that are named alike, not at all, or kept of nothing', () => {
    const named = (id: string, name: string, order: number, kept = ''): DraftEdit[] => [
      { of: 'mode', mode: id, field: 'order', value: order },
      { of: 'mode', mode: id, field: 'name', value: name },
      { of: 'mode', mode: id, field: 'kept', value: kept },
      ...newRowEdits(id, { id: countedIds()(), order: 1, slots: '1', name: 'A' }),
    ];
    const draft = draftOfEdits([
      ...named('a', 'Basic', 1),
      ...named('b', 'BASIC ', 2),
      ...named('c', ' ', 3),
      ...named('d', 'D', 4, 'gone'),
    ]);
    const troubles = typeOfDraft(draft, null).troubles.filter((each) => each.where.of === 'mode');
    expect(troubles.map((each) => [each.where.of === 'mode' && each.where.mode, each.kind])).toEqual([
      ['b', 'mode-named-twice'],
      ['c', 'mode-unnamed'],
      ['d', 'mode-kept-missing'],
    ]);
    expect(troubles.every(stopsPublishing)).toBe(true);
  });
});
