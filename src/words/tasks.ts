import type { RowDifference } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import type { RigTask, RigTaskKind, UnitTask, UnitTaskKind } from '#engine/diff/tasks.ts';
import type { Card, CardField } from '#engine/model/card.ts';
import { formatCell } from '#engine/model/cell-text.ts';
import type { Field } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { nameOfCard } from '#engine/model/read-card.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import { CARD_CHOICE_WORDS, CARD_WORDS, cardCellWords } from './cards.ts';
import { FIELD_WORDS, unitName } from './findings.ts';
import { listed } from './listed.ts';

/** What each kind of task at a unit is called where tasks are counted or chosen by kind. */
export const UNIT_TASK_TITLES: Readonly<Record<UnitTaskKind, string>> = {
  'take-down': 'Take down',
  hang: 'Hang',
  move: 'Move',
  swap: 'Change the type',
  'set-mode': 'Set the mode',
  'set-address': 'Set the address',
  plug: 'Plug',
  wire: 'Wire',
  colour: 'Colour',
  firmware: 'Firmware',
  paper: 'On paper',
};

export const RIG_TASK_TITLES: Readonly<Record<RigTaskKind, string>> = {
  network: 'Network',
  lines: 'Data lines',
  feeds: 'Feeds',
  limits: 'Limits of weight',
  stock: 'Stock and hire',
  record: 'In the record',
};

/** A unit by its place, as `Bar 1 · 4`. */
export const taskUnit = ({ before, after }: UnitTask): string => unitName(before ?? after);

/** What is to be done at a unit, as one sentence without its name: `Set the address: 1:1 → 2:101.` */
export function unitTaskSentence({ kind, before, after, fields }: UnitTask): string {
  switch (kind) {
    case 'take-down':
      return `Take down${typed(before)}.`;
    case 'hang':
      return `Hang${typed(after)}${settings(after)}.`;
    case 'move':
      return `Move: ${placeOf(before)} → ${placeOf(after)}.`;
    case 'swap':
      return `Change the type: ${shown(before, 'type')} → ${shown(after, 'type')}.`;
    case 'set-mode':
    case 'set-address':
    case 'plug':
    case 'wire':
    case 'colour':
    case 'firmware':
    case 'paper':
      return `${UNIT_TASK_TITLES[kind]}: ${listed(fields.map((field) => change(kind, before, after, field)))}.`;
    default:
      return unreachable(kind);
  }
}

/** What is to be done that is at no unit: what it is of, and what of it. */
export function rigTaskSentence(task: RigTask): string {
  const { before, after } = task.row;
  const [part = ''] = task.key.split(' ', 1);
  if (part === 'card') return cardSentence(task.row as RowDifference<Card>, task.of);
  const name = rowName(part, after ?? before);
  if (before === undefined) return `Add ${name}.`;
  return after === undefined ? `Take ${name} out.` : `Change ${name}.`;
}

/** A card that was changed says each cell; one that came or went says what it was. */
function cardSentence({ before, after }: RowDifference<Card>, of: string): string {
  const card = after ?? before;
  if (card === undefined) return '';
  const name = cardName(card, of);
  const cells = [...new Set([...Object.keys(before?.cells ?? {}), ...Object.keys(after?.cells ?? {})])] as CardField[];
  if (after === undefined) return `Take ${name} out.`;
  const changes = cells
    .filter((field) => before?.cells[field] !== after.cells[field])
    .filter((field) => before !== undefined || field !== 'name')
    .map((field) => {
      const now = cardValue(after.cells[field]);
      const words = cardCellWords(card.kind, field);
      return before === undefined ? `${words} ${now}` : `${words} ${cardValue(before.cells[field])} → ${now}`;
    });
  const verb = before === undefined ? 'Add' : 'Change';
  return changes.length === 0 ? `${verb} ${name}.` : `${verb} ${name}: ${listed(changes)}.`;
}

/** `circuit 12`; what has no name of its own is called by what it is of, a port by its node. */
export function cardName(card: Card, of: string): string {
  if (card.kind === 'port') return `port ${card.key.slice(card.key.lastIndexOf('.') + 1)} of node ${of}`.trimEnd();
  const { type, item, called } = card.cells;
  const isOf = card.kind === 'spare' ? type : card.kind === 'hire' ? item : called;
  return `${CARD_WORDS[card.kind]} ${isOf ?? nameOfCard(card)}`;
}

export const cardValue = (value: string | number | null | undefined): string =>
  value === undefined || value === null ? 'nothing' : (CARD_CHOICE_WORDS[String(value)] ?? String(value));

/** What a row of the record is called in a sentence. */
export function rowName(part: string, row: { readonly id: string } | undefined): string {
  const named = row as Partial<Record<string, string>> | undefined;
  switch (part) {
    case 'mode':
      return `the mode ${named?.mode} of ${named?.type}`;
    case 'position':
      return `the position ${named?.name}`;
    case 'universe':
      return `the name of universe ${row?.id}`;
    case 'note':
      return `the note “${named?.text}”`;
    case 'wanted':
      return `the firmware wanted of ${named?.type}`;
    default:
      return `who answers for ${row?.id}`;
  }
}

function change(kind: UnitTaskKind, before: Fixture | undefined, after: Fixture | undefined, field: Field): string {
  const values = `${shown(before, field)} → ${shown(after, field)}`;
  // One field says what the title says already; of several each is named.
  return kind === 'set-mode' || kind === 'colour' || kind === 'firmware' || field === 'address'
    ? values
    : `${FIELD_WORDS[field]} ${values}`;
}

const placeOf = (unit: Fixture | undefined): string => (unit === undefined ? 'nowhere' : unitName(unit));

/** ` Wash (Short)`, a space before it. */
export const typed = (unit: Fixture | undefined): string =>
  unit === undefined || unit.type === '' ? '' : ` ${unit.type}${unit.mode === '' ? '' : ` (${unit.mode})`}`;

/** What a unit is set to and fed by once it hangs. */
export function settings(unit: Fixture | undefined): string {
  if (unit === undefined) return '';
  const said = (['address', 'address2', 'address3', 'address4', 'circuit', 'run', 'colour'] as const)
    .filter((field) => cellOf(unit, field) !== null)
    .map((field) => `${FIELD_WORDS[field]} ${shown(unit, field)}`);
  return said.length === 0 ? '' : `: ${listed(said)}`;
}

/** A cell of a unit as text; `nothing` for an empty one. */
export function shown(unit: Fixture | undefined, field: Field): string {
  const text = unit === undefined ? '' : formatCell(field, cellOf(unit, field));
  return text === '' ? 'nothing' : text;
}
