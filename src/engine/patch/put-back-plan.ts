import type { Result } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import type { Change, ToldCells, ToldValue } from '../history/change.ts';
import type { Universe } from '../model/address.ts';
import { type CardField, type CardKind, cardId, isCardField } from '../model/card.ts';
import { removeCard, setCard } from '../model/card-edits.ts';
import type { Edit, Plan } from '../model/edit.ts';
import { type CellValue, FIELDS } from '../model/field.ts';
import type { Cells } from '../model/fixture.ts';
import type { SignedHazard } from '../model/fixture-type.ts';
import { type FixtureId, type NoteId, SEPARATOR } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { cellEdits, planOf } from './chosen.ts';
import type { PlanRefusal } from './plan-refusal.ts';

/** Whether a change can be put back by itself. A mode cannot: what was in it is told by name only. */
export const canPutBack = ({ part }: Pick<Change, 'part'>): boolean => part !== 'mode';

/**
 * Sets what one change changed to what it was before, whatever has been done since: a cell to its value, a row that came goes, one that
 * went comes again with the cells it had. Everything else stays. [HI3]
 */
export const putBackPlan = (rig: Rig, change: Change): Result<Plan, PlanRefusal> =>
  planOf(rig, 'put-back', putBackEdits(rig, change));

function putBackEdits(rig: Rig, change: Change): readonly Edit[] {
  switch (change.part) {
    case 'unit':
      return unitEdits(rig, change);
    case 'card':
      return cardEdits(rig, change);
    case 'mode':
      return [];
    default:
      return rowEdits(rig, change);
  }
}

function unitEdits(rig: Rig, { row, field, before }: Change): readonly Edit[] {
  const fixture = row as FixtureId;
  const there = getRow(rig.fixtures, fixture);
  if (field === null) {
    if (before === null) return there === undefined ? [] : [{ kind: 'remove-fixture', fixture }];
    return there === undefined ? [{ kind: 'add-fixture', fixture, cells: before as Cells }] : [];
  }
  const known = FIELDS.find((each) => each === field);
  return known === undefined || there === undefined ? [] : cellEdits(there, known, before as CellValue);
}

function cardEdits(rig: Rig, { row, field, before }: Change): readonly Edit[] {
  const { kind, key } = cardOfRow(row);
  const there = getRow(rig.cards, cardId(kind, key));
  if (field !== null) {
    const same = there === undefined || !isCardField(kind, field) || (there.cells[field] ?? null) === before;
    return same ? [] : setCard(kind, key, { [field]: before as CellValue });
  }
  if (before === null) return removeCard(rig, kind, key);
  return there === undefined ? setCard(kind, key, before as Readonly<Record<CardField, CellValue>>) : [];
}

/** The kind and key in the id of a card. */
export function cardOfRow(row: string): { readonly kind: CardKind; readonly key: string } {
  const at = row.indexOf(SEPARATOR);
  return { kind: row.slice(0, at) as CardKind, key: row.slice(at + 1) };
}

/** Rows that are written as one value each: the whole row as it will be, from what it is now. */
function rowEdits(rig: Rig, { part, row, field, before }: Change): readonly Edit[] {
  const now = partRow(rig, part, row);
  if (field === null) return (before === null) === (now === undefined) ? [] : rowEdit(part, row, before, now);
  const same = now === undefined || JSON.stringify(now[field] ?? null) === JSON.stringify(before);
  return same ? [] : rowEdit(part, row, { ...now, [field]: before }, now);
}

function partRow(rig: Rig, part: Change['part'], row: string): ToldCells | undefined {
  const rows = { position: rig.positions, universe: rig.universes, note: rig.notes, wanted: rig.wanted };
  const found =
    part === 'signature'
      ? getRow(rig.signatures, row)
      : getRow(rows[part as keyof typeof rows] as typeof rig.notes, row);
  return found as unknown as ToldCells | undefined;
}

/** The edit that makes a row say `cells`, or takes it away when they are null. */
function rowEdit(
  part: Change['part'],
  row: string,
  cells: ToldCells | null,
  now: ToldCells | undefined,
): readonly Edit[] {
  const text = (field: string) => String(cells?.[field] ?? '');
  const number = (field: string) => Number(cells?.[field] ?? 0);
  switch (part) {
    case 'position':
      return cells === null
        ? [{ kind: 'remove-position', name: String(now?.name ?? row) }]
        : [{ kind: 'set-position', name: text('name'), order: number('order') }];
    case 'universe':
      return [{ kind: 'set-universe', universe: Number(row) as Universe, label: text('label') }];
    case 'note':
      return cells === null
        ? [{ kind: 'remove-note', note: row as NoteId }]
        : [{ kind: 'set-note', note: row as NoteId, text: text('text'), order: number('order') }];
    case 'wanted':
      return [
        {
          kind: 'set-wanted',
          type: cells === null ? String(now?.type ?? row) : text('type'),
          version: text('version'),
        },
      ];
    default: {
      const types = (cells?.types ?? []) as readonly Exclude<ToldValue, null>[];
      const hazard = row as SignedHazard;
      return [{ kind: 'set-signature', hazard, person: text('person'), on: text('on'), types: types.map(String) }];
    }
  }
}
