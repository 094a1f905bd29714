import type * as Y from 'yjs';
import { changeRows, getRow, type RowChange, type Table, tableOf } from '#base/table.ts';
import { type Card, cardId, makeCard, withCell } from '#engine/model/card.ts';
import type { CellValue } from '#engine/model/field.ts';
import { isCellValue } from '../schema/block.ts';
import { type CardPlace, parseCardCellKey } from '../schema/card-key.ts';

/** The cards that a document holds. */
export function readCards(map: Y.Map<unknown>): Table<Card> {
  const cells = new Map<string, { readonly place: CardPlace; readonly cells: Record<string, CellValue> }>();
  for (const [cellKey, stored] of map) {
    const place = parseCardCellKey(cellKey);
    if (place === undefined || !isCellValue(stored)) continue;
    const id = cardId(place.card, place.key);
    const card = cells.get(id) ?? { place, cells: {} };
    cells.set(id, card);
    card.cells[place.field] = stored;
  }
  const cards = [...cells.values()].map(({ place, cells: of }) => makeCard(place.card, place.key, of));
  return tableOf(cards.filter((card) => card !== undefined));
}

/** `cards` with the cells under `keys` read anew. */
export function rereadCards(cards: Table<Card>, map: Y.Map<unknown>, keys: readonly string[]): Table<Card> {
  const changed = new Map<string, Card | undefined>();
  for (const cellKey of keys) {
    const place = parseCardCellKey(cellKey);
    if (place === undefined) continue;
    const stored = map.get(cellKey);
    const id = cardId(place.card, place.key);
    const before = changed.has(id) ? changed.get(id) : getRow(cards, id);
    changed.set(id, withCell(before, { kind: 'set-card', ...place, value: isCellValue(stored) ? stored : null }));
  }
  return changeRows(
    cards,
    [...changed].map(([id, row]): RowChange<Card> => ({ id, row })),
  );
}
