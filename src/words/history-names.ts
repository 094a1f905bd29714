import type { ChangePart } from '#engine/history/change.ts';
import type { Card } from '#engine/model/card.ts';
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
      return nameOfCard(row as Card);
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
