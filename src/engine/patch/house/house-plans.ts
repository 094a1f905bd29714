import { type Result, refuse } from '#base/result.ts';
import { getRow, rowsOf } from '#base/table.ts';
import { CARD_KEY_LIMIT, type CardKind, cardId, nameKey } from '../../model/card.ts';
import { moveCard, removeCard, setCard } from '../../model/card-edits.ts';
import type { Edit, Plan, PlanName } from '../../model/edit.ts';
import { positionId } from '../../model/ids.ts';
import { recordOf } from '../../model/record.ts';
import type { Rig } from '../../model/rig.ts';
import { planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { contactLine, hireLine, type LineCells, outletLine, spareLine } from './typed-line.ts';

/** What is added by one typed line. */
export type LineKind = Extract<CardKind, 'outlet' | 'spare' | 'contact' | 'hire'>;

const NAME = { outlet: 'name', spare: 'type', contact: 'name', hire: 'item' } as const;

/** The plan by which the cells of a kind of card are changed. */
export const HOUSE_PLAN = {
  outlet: 'set-house',
  spare: 'set-house',
  contact: 'set-house',
  hire: 'set-hire',
} as const satisfies Readonly<Record<LineKind, PlanName>>;

/** Adds what a line says. `id` is made by whoever asks; an outlet is known by its name instead. [HO4] */
export function addLine(rig: Rig, kind: LineKind, line: string, id: string): Result<Plan, PlanRefusal> {
  const cells = cellsOf(rig, kind, line);
  const name = String(cells[NAME[kind]] ?? '');
  if (name === '') return refuse({ code: 'nothing-said', of: 'line' });
  if (kind !== 'outlet') return planOf(rig, HOUSE_PLAN[kind], setCard(kind, id, cells));
  const free = freeKey(rig, name);
  return free.ok ? planOf(rig, 'set-house', setCard('outlet', free.value, cells)) : free;
}

function cellsOf(rig: Rig, kind: LineKind, line: string): LineCells {
  switch (kind) {
    case 'outlet':
      return outletLine(line);
    case 'spare':
      return spareLine(rig, line);
    case 'contact':
      return contactLine(line);
    case 'hire':
      return hireLine(line);
  }
}

/** Takes a card of the record away. [HO5] */
export const removeLine = (rig: Rig, kind: LineKind, key: string): Result<Plan, PlanRefusal> =>
  planOf(rig, HOUSE_PLAN[kind], removeCard(rig, kind, key));

/** Gives an outlet another name. [HO6] */
export function renameOutlet(rig: Rig, key: string, name: string): Result<Plan, PlanRefusal> {
  const free = nameKey(name) === key ? { ok: true as const, value: key } : freeKey(rig, name);
  if (!free.ok) return free;
  if (getRow(rig.cards, cardId('outlet', key)) === undefined) return refuse({ code: 'no-such-card', card: 'outlet' });
  return planOf(rig, 'set-house', moveCard(rig, 'outlet', key, { key: free.value, cells: { name: name.trim() } }));
}

function freeKey(rig: Rig, name: string): Result<string, PlanRefusal> {
  const key = nameKey(name);
  if (key === '' || key.length > CARD_KEY_LIMIT) return refuse({ code: 'no-name' });
  return recordOf(rig.cards).outlets.has(key)
    ? refuse({ code: 'name-taken', name: name.trim() })
    : { ok: true, value: key };
}

/** Adds a position at the end of the order, with a place in the record. [HO3] */
export function addPlace(rig: Rig, name: string): Result<Plan, PlanRefusal> {
  const position = name.trim();
  const key = nameKey(position);
  if (key === '' || key.length > CARD_KEY_LIMIT) return refuse({ code: 'no-name' });
  const isTaken = getRow(rig.positions, positionId(position)) !== undefined || recordOf(rig.cards).places.has(key);
  if (isTaken) return refuse({ code: 'name-taken', name: position });
  const last = Math.max(0, ...[...rowsOf(rig.positions)].map(({ order }) => order));
  const order: Edit = { kind: 'set-position', name: position, order: last + 1 };
  return planOf(rig, 'set-house', [order, ...setCard('place', key, { position })]);
}

/** Takes away what the house says of a position, and its place in the order; its units stay where they hang. [HO5] */
export function removePlace(rig: Rig, key: string): Result<Plan, PlanRefusal> {
  const position = getRow(rig.positions, key);
  const order: readonly Edit[] = position === undefined ? [] : [{ kind: 'remove-position', name: position.name }];
  return planOf(rig, 'set-house', [...removeCard(rig, 'place', key), ...order]);
}
