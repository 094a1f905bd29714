import { rowsOf } from '#base/table.ts';
import type { CardField } from '../model/card.ts';
import { compareNatural } from '../model/natural-order.ts';
import type { Rig } from '../model/rig.ts';
import { cellsReader, columnsFor } from './fixture-cells.ts';
import { cautionLines, type FootLine, findingLines, rowsFrom, type Sheet, type Standing } from './sheet.ts';
import { byPlace } from './sheet-order.ts';

/**
 * Every fixture with all its cells, by position and unit. With the records at its foot it is the whole rig: importing it
 * into an empty rig gives the same one.
 */
export function patchSheet(rig: Rig, standing: Standing): Sheet {
  const fixtures = byPlace(rig);
  const columns = columnsFor(fixtures);
  const rows = rowsFrom(fixtures, cellsReader(rig, columns));
  return {
    kind: 'patch',
    columns,
    ...rows,
    foot: [...records(rig), ...cautionLines(rig, fixtures, standing), ...findingLines(standing)],
  };
}

function records(rig: Rig): readonly FootLine[] {
  const modes = [...rowsOf(rig.modes)].sort((a, b) => compareNatural(a.type, b.type) || compareNatural(a.mode, b.mode));
  const positions = [...rowsOf(rig.positions)].sort((a, b) => a.order - b.order || compareNatural(a.name, b.name));
  const universes = [...rowsOf(rig.universes)].sort((a, b) => a.universe - b.universe);
  const notes = [...rowsOf(rig.notes)].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
  const wanted = [...rowsOf(rig.wanted)].sort((a, b) => compareNatural(a.type, b.type));
  const signatures = [...rowsOf(rig.signatures)].sort((a, b) => (a.id < b.id ? -1 : 1));
  const cards = [...rowsOf(rig.cards)].sort((a, b) => (a.id < b.id ? -1 : 1));
  return [
    ...positions.map(({ name, order }): FootLine => ({ kind: 'position', name, order })),
    ...modes.map(({ type, mode, footprints }): FootLine => ({ kind: 'mode', type, mode, footprints })),
    ...universes.map(({ universe, label }): FootLine => ({ kind: 'universe', universe, label })),
    ...notes.map(({ text, order }): FootLine => ({ kind: 'note', text, order })),
    ...wanted.map(({ type, version }): FootLine => ({ kind: 'wanted', type, version })),
    ...signatures.flatMap(({ id: hazard, person, on, types }) =>
      (types.length === 0 ? [''] : types).map((type): FootLine => ({ kind: 'signature', hazard, person, on, type })),
    ),
    ...cards.flatMap(({ kind: card, key, cells }) =>
      Object.entries(cells).flatMap(([field, value]): FootLine[] =>
        value === null ? [] : [{ kind: 'card', card, key, field: field as CardField, value }],
      ),
    ),
  ];
}
