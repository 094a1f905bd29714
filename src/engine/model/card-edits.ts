import { getRow } from '#base/table.ts';
import { type CardEdit, type CardField, type CardKind, cardId } from './card.ts';
import type { CellValue } from './field.ts';
import type { Rig } from './rig.ts';

/** The edits that set some cells of a card; null empties one. */
export function setCard<Kind extends CardKind>(
  card: Kind,
  key: string,
  cells: Partial<Readonly<Record<CardField<Kind>, CellValue>>>,
): readonly CardEdit[] {
  return (Object.entries(cells) as [CardField, CellValue][]).map(([field, value]) => ({
    kind: 'set-card',
    card,
    key,
    field,
    value,
  }));
}

/** The edits that take a card away: every cell it has is emptied. */
export function removeCard(rig: Rig, card: CardKind, key: string): readonly CardEdit[] {
  const cells = getRow(rig.cards, cardId(card, key))?.cells ?? {};
  return (Object.keys(cells) as CardField[]).map((field) => ({ kind: 'set-card', card, key, field, value: null }));
}

/** The edits that give a card another key, with `cells` set anew: what is known by its name is renamed so. */
export function moveCard(
  rig: Rig,
  card: CardKind,
  from: string,
  to: { readonly key: string; readonly cells: Readonly<Record<string, CellValue>> },
): readonly CardEdit[] {
  const cells = { ...getRow(rig.cards, cardId(card, from))?.cells, ...to.cells };
  return [...(from === to.key ? [] : removeCard(rig, card, from)), ...setCard(card, to.key, cells)];
}
