import { CARD_KINDS, type CardField, type CardKind, isCardField, isCardKey } from '#engine/model/card.ts';

/** A cell of a card. */
export interface CardPlace {
  readonly card: CardKind;
  readonly key: string;
  readonly field: CardField;
}

/** Where a document keeps a cell of a card. The key comes last, for a name may hold a `/`. */
export const cardCellKey = ({ card, key, field }: CardPlace): string => `${card}/${field}/${key}`;

/** Undefined for a key that names no cell this version knows. */
export function parseCardCellKey(cellKey: string): CardPlace | undefined {
  const [kind = '', field = ''] = cellKey.split('/', 2);
  const key = cellKey.slice(kind.length + field.length + 2);
  const card = CARD_KINDS.find((known) => known === kind);
  if (card === undefined || !isCardField(card, field) || !isCardKey(card, key)) return undefined;
  return { card, key, field };
}
