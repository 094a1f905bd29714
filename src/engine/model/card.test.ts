import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { getRow, rowsOf, tableOf } from '#base/table.ts';
import { randomPlan, randomValue } from '#tests/support/random-plan.ts';
import { applyEdits } from './apply-edits.ts';
import {
  CARD_CELLS,
  CARD_KINDS,
  type CardField,
  cardId,
  cellKindOf,
  formatCardCell,
  isCardKey,
  makeCard,
  parseCardCell,
  parseCardText,
  portKey,
  readCardCell,
} from './card.ts';
import { plantOf } from './plant.ts';
import { EMPTY_RIG } from './rig.ts';
import { parseSource, spellSource } from './run-source.ts';

const card = (kind: (typeof CARD_KINDS)[number], key: string, cells: Record<string, string | number>) => {
  const made = makeCard(kind, key, cells);
  if (made === undefined) throw new Error('no card');
  return made;
};

describe('cards', () => {
  it('[CD1] a card is there while a cell of it holds something, whatever it holds', () => {
    const set = (value: string | number | null) =>
      ({ kind: 'set-card', card: 'run', key: 'stage left', field: 'name', value }) as const;
    const rig = applyEdits(EMPTY_RIG, [set('Stage left')]);
    expect(getRow(rig.cards, cardId('run', 'stage left'))?.cells).toEqual({ name: 'Stage left' });
    expect(applyEdits(rig, [set('Stage left')])).toBe(rig);
    for (const nothing of [null, ''] as const) expect(applyEdits(rig, [set(nothing)]).cards.size).toBe(0);
  });

  it('[CD2] a cell says what its kind can mean, and nothing else is read into it', () => {
    const read = (kind: (typeof CARD_KINDS)[number], field: CardField, value: string | number) =>
      readCardCell(cellKindOf(kind, field), value);
    expect(read('delivery', 'priority', 200)).toBe(200);
    for (const value of [201, -1, 1.5, '100', 'high']) expect(read('delivery', 'priority', value)).toBe(null);
    expect(read('setup', 'share', 0.8)).toBe(0.8);
    for (const value of [0, -0.5, 1.2, '0.8']) expect(read('setup', 'share', value)).toBe(null);
    expect(read('supply', 'phases', 3)).toBe('3');
    expect(read('circuit', 'phase', '1-3')).toBe(null);
    expect(read('run', 'notes', 7)).toBe('7');
  });

  it('[CD3] what people type is read as its cell needs it, and what cannot be read stays as it is', () => {
    const parse = (kind: (typeof CARD_KINDS)[number], field: CardField, text: string) =>
      parseCardText(cellKindOf(kind, field), text);
    expect(parse('run', 'lead', ' 12,5 ')).toBe(12.5);
    expect(parse('circuit', 'rating', '16')).toBe(16);
    expect(parse('circuit', 'rating', 'sixteen')).toBe('sixteen');
    expect(parse('delivery', 'sacn', '0101')).toBe(101);
    expect(parse('delivery', 'sacn', '1.5')).toBe('1.5');
    expect(parse('node', 'name', '  ')).toBe(null);
  });

  it('[CD4] stored values come back as they went out', () => {
    const rng = seededRng(41);
    for (let round = 0; round < 2000; round++) {
      const value = randomValue(rng);
      if (value !== null && value !== '') expect(parseCardCell(formatCardCell(value))).toBe(value);
    }
    for (const text of ["'", "'1", '1', '1e3', 'NaN', '-0', '007'])
      expect(parseCardCell(formatCardCell(text))).toBe(text);
  });

  it('[CD5] any cards at all amount to something, and every cell that cannot be read is named', () => {
    for (let seed = 0; seed < 300; seed++) {
      const { cards } = applyEdits(EMPTY_RIG, randomPlan(seededRng(seed), 3, 60).edits);
      const plant = plantOf(cards);
      expect(plantOf(cards)).toBe(plant);
      const read = [...rowsOf(cards)].flatMap(({ kind, cells }) =>
        Object.entries(cells).map(([field, value]) => readCardCell(cellKindOf(kind, field as CardField), value)),
      );
      expect(plant.unreadable.length).toBe(read.filter((value) => value === null).length);
    }
  });

  it('[CD5] a card without its name is nothing yet; the others come in natural order', () => {
    const plant = plantOf(
      tableOf([
        card('node', 'a', { name: 'Node 10', role: 'node', ports: 4, address: '2.0.0.10' }),
        card('node', 'b', { name: 'Node 2' }),
        card('node', 'c', { notes: 'somebody took its name away' }),
        card('port', portKey('a', 2), { by: 'sacn', number: 101 }),
        card('run', 'stage left', { name: 'Stage left', from: `port ${portKey('a', 2)}`, lead: 20, end: 'terminated' }),
        card('limit', 'bridge', { position: 'Bridge', person: 'Ona Reeve' }),
      ]),
    );
    expect(plant.nodes.map(({ name, ports }) => `${name} ${ports}`)).toEqual(['Node 2 0', 'Node 10 4']);
    expect(plant.ports.get('a.2')).toMatchObject({ node: 'a', index: 2, by: 'sacn', number: 101 });
    expect(plant.runs.get('stage left')).toMatchObject({ from: { kind: 'port', port: 'a.2' }, lead: 20, reach: null });
    expect(plant.limits.size).toBe(0);
  });

  it('[CD6] where a run begins is read as it was spelled', () => {
    for (const cell of ['', 'port a.1', 'splitter s1.12', 'cable 3', 'cable 63999']) {
      expect(spellSource(parseSource(cell))).toBe(cell);
    }
    for (const cell of ['port a', 'splitter .1', 'cable 0', 'cable 64000', 'port', 'somewhere 3']) {
      expect(parseSource(cell)).toEqual({ kind: 'none' });
    }
  });

  it('[CD7] keys are such as their kind has', () => {
    expect(isCardKey('setup', 'rig')).toBe(true);
    expect(isCardKey('port', 'n1.4')).toBe(true);
    expect(isCardKey('run', 'c/1 left')).toBe(true);
    for (const [kind, key] of [
      ['setup', 'x'],
      ['node', 'n.1'],
      ['node', 'a/b'],
      ['port', 'n1.0'],
      ['port', 'n1'],
      ['delivery', '0'],
      ['delivery', '64000'],
      ['run', 'Stage Left'],
      ['run', ''],
    ] as const) {
      expect(isCardKey(kind, key), `${kind} ${key}`).toBe(false);
    }
    expect(CARD_KINDS.every((kind) => Object.keys(CARD_CELLS[kind]).every((field) => /^[a-zA-Z]+$/.test(field)))).toBe(
      true,
    );
  });
});
