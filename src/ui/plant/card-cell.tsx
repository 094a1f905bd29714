import { getRow } from '#base/table.ts';
import { type CardField, type CardKind, cardId, cellKindOf, parseCardText, readCardCell } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { PlanName } from '#engine/model/edit.ts';
import type { CellValue } from '#engine/model/field.ts';
import type { Rig } from '#engine/model/rig.ts';
import { CARD_CHOICE_WORDS, CARD_SCREEN_WORDS, cardCellWords } from '#words/cards.ts';
import { LineField } from '../kit/line-field.tsx';
import { BareSelect } from '../kit/select.tsx';
import type { RigStore } from '../live/rig-store.ts';

export interface CardCellProps {
  readonly store: RigStore;
  readonly rig: Rig;
  readonly plan: PlanName;
  readonly card: CardKind;
  /** The key of the card; one that is not there yet comes to be with its first cell. */
  readonly of: string;
  readonly field: CardField;
  /** What a screen reader calls it: the card and the cell. */
  readonly name: string;
  readonly placeholder?: string;
  readonly disabled: boolean;
  /** Id of a list of values to offer. */
  readonly list?: string;
  /** Cells that a card gets with its first: what makes it one. */
  readonly begins?: Readonly<Record<string, CellValue>> | undefined;
}

/** One cell of a card: written when it is left, and marked where it cannot be read. */
export function CardCell({
  store,
  rig,
  plan,
  card,
  of,
  field,
  name,
  placeholder,
  disabled,
  list,
  begins,
}: CardCellProps) {
  const kind = cellKindOf(card, field);
  const stored = getRow(rig.cards, cardId(card, of))?.cells;
  const value: CellValue = stored?.[field] ?? null;
  const write = (next: CellValue) => {
    store.apply({ name: plan, edits: setCard(card, of, { ...(stored === undefined ? begins : {}), [field]: next }) });
  };
  if (kind.is === 'choice') {
    const known = readCardCell(kind, value);
    const choices = kind.of.map((word) => ({ value: word, label: CARD_CHOICE_WORDS[word] ?? word }));
    const odd = value !== null && known === null ? [{ value: String(value), label: String(value) }] : [];
    return (
      <BareSelect
        name={name}
        disabled={disabled}
        choices={[{ value: '', label: placeholder ?? CARD_SCREEN_WORDS.notSaid }, ...odd, ...choices]}
        value={value === null ? '' : String(value)}
        onChoose={(word) => write(word === '' ? null : word)}
      />
    );
  }
  const unread = value !== null && readCardCell(kind, value) === null;
  return (
    <LineField
      name={name}
      value={value === null ? '' : String(value)}
      {...(placeholder === undefined ? {} : { placeholder })}
      disabled={disabled}
      list={list}
      inputMode={kind.is === 'text' ? 'text' : 'decimal'}
      {...(unread ? { trouble: CARD_SCREEN_WORDS.unread(cardCellWords(card, field)) } : {})}
      onWrite={(text) => write(parseCardText(kind, text))}
    />
  );
}
