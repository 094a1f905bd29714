import { getRow } from '#base/table.ts';
import { formatPortAddress, isPortAddress, readPortAddress } from '#engine/address/port-address.ts';
import { cardId } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { CARD_SCREEN_WORDS, cardCellWords } from '#words/cards.ts';
import { LineField } from '../../kit/line-field.tsx';
import type { CardCellProps } from '../../plant/card-cell.tsx';

/** The cell of a Port-Address: typed as its parts, decimal or hexadecimal, kept as the number it is. */
export function PortAddressCell({ store, rig, plan, card, of, field, name, disabled }: CardCellProps) {
  const value = getRow(rig.cards, cardId(card, of))?.cells[field] ?? null;
  const known = typeof value === 'number' && isPortAddress(value) ? formatPortAddress(value) : undefined;
  const write = (text: string) => {
    const trimmed = text.trim();
    const next = trimmed === '' ? null : (readPortAddress(trimmed) ?? trimmed);
    store.apply({ name: plan, edits: setCard(card, of, { [field]: next }) });
  };
  return (
    <LineField
      name={name}
      value={known ?? String(value ?? '')}
      disabled={disabled}
      {...(value === null || known !== undefined
        ? {}
        : { trouble: CARD_SCREEN_WORDS.unread(cardCellWords(card, field)) })}
      onWrite={write}
    />
  );
}
