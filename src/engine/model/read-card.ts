import { CARD_CELLS, type Card, type CardField, type CardKind, cellKindOf, readCardCell } from './card.ts';

/** A cell of a card that cannot be what stands in it. */
export interface UnreadableCardCell {
  readonly card: CardKind;
  readonly key: string;
  /** The name of the card, or what it is known by. */
  readonly of: string;
  readonly field: CardField;
  readonly value: string | number;
}

/** What a card is called, as far as anybody said. */
export const nameOfCard = (card: Card) => String(card.cells.name ?? card.cells.position ?? card.key);

/** A cell of a card as it may be meant, null else. */
function read(card: Card | undefined, field: CardField): string | number | null {
  return card === undefined ? null : readCardCell(cellKindOf(card.kind, field), card.cells[field] ?? null);
}

// What a choice may be is written once, in CARD_CELLS: its reader gives nothing else.
export const textIn = (card: Card, field: CardField) => String(read(card, field) ?? '');
export const numberIn = (card: Card | undefined, field: CardField) => read(card, field) as number | null;
export const wordIn = <Word extends string>(card: Card | undefined, field: CardField) =>
  read(card, field) as Word | null;

/** The cells of a card that cannot be what stands in them. */
export function unreadableCells(card: Card): UnreadableCardCell[] {
  return (Object.keys(CARD_CELLS[card.kind]) as CardField[]).flatMap((field) => {
    const value = card.cells[field] ?? null;
    if (value === null || read(card, field) !== null) return [];
    return [Object.freeze({ card: card.kind, key: card.key, of: nameOfCard(card), field, value })];
  });
}
