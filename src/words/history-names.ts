import type { ChangePart } from '#engine/history/change.ts';
import type { Card, CardKind } from '#engine/model/card.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { nameOfCard } from '#engine/model/read-card.ts';
import { unitName } from './findings.ts';

/** What a row of a rig is called, as it was called when it changed. */
export function nameOfRow(part: ChangePart, row: { readonly id: string }): string {
  const named = row as Partial<Record<string, string>>;
  switch (part) {
    case 'unit':
      return unitName(row as Fixture);
    case 'card':
      return cardName(row as Card);
    case 'mode':
      return `${named.type} · ${named.mode}`;
    case 'position':
      return named.name ?? '';
    case 'universe':
    case 'signature':
      return row.id;
    case 'note':
      return named.text ?? '';
    case 'wanted':
      return named.type ?? '';
  }
}

/** The cell that says what a card is of, where it has no name. */
const CALLED: Partial<Readonly<Record<CardKind, string>>> = {
  spare: 'type',
  fault: 'called',
  swap: 'called',
  reading: 'called',
  hire: 'item',
};

/** What a card is called: nothing, where its key is all that is known and is none that a person has ever read. */
function cardName(card: Card): string {
  switch (card.kind) {
    case 'setup':
    case 'tick':
      return '';
    case 'venue':
      return String(card.cells.name ?? '');
    case 'port':
      return card.key.slice(card.key.lastIndexOf('.') + 1);
    case 'node':
    case 'splitter':
    case 'contact':
      return String(card.cells.name ?? '');
    default: {
      const field = CALLED[card.kind];
      return field === undefined ? nameOfCard(card) : String(card.cells[field] ?? '');
    }
  }
}
