import type { GridRow } from '#engine/list/grid.ts';
import type { ListMode, ListPosition } from '#engine/list/read-list.ts';
import { LAST_UNIVERSE } from '#engine/model/address.ts';
import { CARD_KINDS, type CardEdit, isCardField, isCardKey, parseCardCell } from '#engine/model/card.ts';
import { foldName } from '#engine/model/ids.ts';
import { RECORD_MARKS } from '#engine/sheet/patch-format.ts';
import { readFootprint, readWhole } from './read-number.ts';

/** What the foot of a patch sheet of ours says of the rig besides its fixtures. Filled by `readRecord`. */
export interface OwnRecords {
  readonly modes: ListMode[];
  readonly positions: ListPosition[];
  readonly universes: { readonly universe: number; readonly label: string }[];
  readonly notes: { readonly text: string; readonly order: number }[];
  readonly wanted: { readonly type: string; readonly version: string }[];
  readonly cards: CardEdit[];
}

/** Reads one line of the foot into `records`. `bad` for a record that does not say what its kind should. */
export function readRecord(row: GridRow, records: OwnRecords): 'record' | 'foot' | 'bad' {
  const [mark, first = '', second = '', third = '', fourth = ''] = row.cells;
  switch (mark) {
    case RECORD_MARKS.mode: {
      const footprints = readFootprint(third);
      return footprints === undefined ? 'bad' : keep(records.modes, { type: first, mode: second, footprints });
    }
    case RECORD_MARKS.position: {
      const order = readOrder(second);
      return order === undefined || first === '' ? 'bad' : keep(records.positions, { name: first, order });
    }
    case RECORD_MARKS.universe: {
      const universe = readWhole(first);
      if (universe === undefined || universe < 1 || universe > LAST_UNIVERSE || second === '') return 'bad';
      return keep(records.universes, { universe, label: second });
    }
    case RECORD_MARKS.note: {
      const order = readOrder(second);
      return order === undefined ? 'bad' : keep(records.notes, { text: first, order });
    }
    case RECORD_MARKS.wanted:
      return foldName(first) === '' || second === '' ? 'bad' : keep(records.wanted, { type: first, version: second });
    case RECORD_MARKS.card: {
      const card = CARD_KINDS.find((kind) => kind === first);
      const value = parseCardCell(fourth);
      if (card === undefined || !isCardKey(card, second) || !isCardField(card, third) || value === null) return 'bad';
      return keep(records.cards, { kind: 'set-card', card, key: second, field: third, value });
    }
    default:
      return 'foot';
  }
}

function keep<T>(list: T[], entry: T): 'record' {
  list.push(entry);
  return 'record';
}

function readOrder(text: string): number | undefined {
  const order = Number(text);
  return text.trim() !== '' && Number.isFinite(order) ? order : undefined;
}
