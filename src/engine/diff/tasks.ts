import type { RowDifference } from '#base/table.ts';
import { getRow, type Table } from '#base/table.ts';
import { type Card, type CardKind, cardId } from '../model/card.ts';
import type { Edit } from '../model/edit.ts';
import type { Field } from '../model/field.ts';
import type { Fixture } from '../model/fixture.ts';
import { positionId } from '../model/ids.ts';
import { compareNatural } from '../model/natural-order.ts';
import { nameOfCard } from '../model/read-card.ts';
import type { Position, Rig } from '../model/rig.ts';
import {
  cardEdits,
  differingFields,
  fixtureEdits,
  modeEdit,
  noteEdit,
  positionEdit,
  signatureEdit,
  universeEdit,
  wantedEdit,
} from './diff-edits.ts';
import { diffRigs, type RigDiff } from './rig-diff.ts';

/** What somebody does at a unit, in the order one does it there; `paper` is what only the record has to say anew. */
export const UNIT_TASKS = [
  'take-down',
  'hang',
  'move',
  'swap',
  'set-mode',
  'set-address',
  'plug',
  'wire',
  'colour',
  'firmware',
  'paper',
] as const;

/** What is done for the whole rig: at the network, data lines, feeds and limits, in the stock, and in the record itself. */
export const RIG_TASKS = ['network', 'lines', 'feeds', 'limits', 'stock', 'record'] as const;

export type UnitTaskKind = (typeof UNIT_TASKS)[number];
export type RigTaskKind = (typeof RIG_TASKS)[number];

/** Something to do at one unit. */
export interface UnitTask {
  readonly kind: UnitTaskKind;
  /** Unit and kind in one text: the same wherever the same is to be done. */
  readonly key: string;
  /** Where one goes for it: the position it will hang at, or hangs at when it is taken down. */
  readonly position: string;
  readonly before: Fixture | undefined;
  readonly after: Fixture | undefined;
  /** The fields that it sets; none for a unit that is hung or taken down, which is all of them. */
  readonly fields: readonly Field[];
  /** What the record says once it is done. */
  readonly edits: readonly Edit[];
}

/** Something to do that is at no unit. */
export interface RigTask {
  readonly kind: RigTaskKind;
  readonly key: string;
  /** Of a port the name of its node, which its own card does not say; empty for all else. */
  readonly of: string;
  readonly row: RowDifference<{ readonly id: string }>;
  readonly edits: readonly Edit[];
}

export interface Tasks {
  /** Position by position in the order of the second rig, unit by unit in natural order. */
  readonly units: readonly UnitTask[];
  readonly rig: readonly RigTask[];
}

const TASK_OF_FIELD: Readonly<Record<Field, UnitTaskKind>> = {
  position: 'move',
  unit: 'move',
  type: 'swap',
  mode: 'set-mode',
  address: 'set-address',
  address2: 'set-address',
  address3: 'set-address',
  address4: 'set-address',
  circuit: 'plug',
  run: 'wire',
  along: 'wire',
  cable: 'wire',
  colour: 'colour',
  firmware: 'firmware',
  channel: 'paper',
  purpose: 'paper',
  notes: 'paper',
  order: 'paper',
  lock: 'paper',
};

const TASK_OF_CARD: Readonly<Record<CardKind, RigTaskKind>> = {
  setup: 'record',
  node: 'network',
  port: 'network',
  delivery: 'network',
  run: 'lines',
  splitter: 'lines',
  circuit: 'feeds',
  supply: 'feeds',
  limit: 'limits',
  venue: 'record',
  place: 'record',
  outlet: 'network',
  spare: 'stock',
  contact: 'record',
  fault: 'record',
  swap: 'record',
  reading: 'record',
  hire: 'stock',
  tick: 'record',
};

/**
 * What must be done so that `before` becomes `after`: doing all of it, in any order, makes them equal, and nothing is in it that is so
 * already. [DF4] [DF5]
 */
export function tasksOf(before: Rig, after: Rig): Tasks {
  const diff = diffRigs(before, after);
  const units = diff.fixtures.flatMap(unitTasks);
  return {
    units: units.sort(placeOrder(after.positions, before.positions)),
    rig: rigTasks(diff, (port) => nodeName(port, after) ?? nodeName(port, before) ?? ''),
  };
}

function unitTasks(difference: RowDifference<Fixture>): readonly UnitTask[] {
  const { id, before, after } = difference;
  const make = (kind: UnitTaskKind, fields: readonly Field[], edits: readonly Edit[]): UnitTask => ({
    kind,
    key: `${id} ${kind}`,
    position: (after ?? before)?.position ?? '',
    before,
    after,
    fields,
    edits,
  });
  const edits = fixtureEdits(difference);
  if (after === undefined) return [make('take-down', [], edits)];
  if (before === undefined) return [make('hang', [], edits)];
  const fields = differingFields(before, after);
  return UNIT_TASKS.flatMap((kind) => {
    const own = fields.filter((field) => TASK_OF_FIELD[field] === kind);
    const theirs = edits.filter((edit) => edit.kind === 'set-cell' && own.includes(edit.field));
    return own.length === 0 ? [] : [make(kind, own, theirs)];
  });
}

function rigTasks(diff: RigDiff, nodeOf: (port: Card) => string): readonly RigTask[] {
  const of = <Row extends { readonly id: string }>(
    part: string,
    rows: readonly RowDifference<Row>[],
    kindOf: (row: RowDifference<Row>) => RigTaskKind,
    editsOf: (row: RowDifference<Row>) => readonly Edit[],
  ): RigTask[] =>
    rows.map((row) => ({ kind: kindOf(row), key: `${part} ${row.id}`, of: '', row, edits: editsOf(row) }));
  const record = () => 'record' as const;
  const ofCard = ({ before, after }: RowDifference<Card>) => {
    const card = after ?? before;
    return card === undefined ? 'record' : TASK_OF_CARD[card.kind];
  };
  const withNode = (task: RigTask): RigTask => {
    const card = (task.row.after ?? task.row.before) as Card | undefined;
    return card?.kind === 'port' ? { ...task, of: nodeOf(card) } : task;
  };
  const all = [
    ...of('card', diff.cards, ofCard, cardEdits).map(withNode),
    ...of('mode', diff.modes, record, (row) => [modeEdit(row)]),
    ...of('position', diff.positions, record, (row) => [positionEdit(row)]),
    ...of('universe', diff.universes, record, (row) => [universeEdit(row)]),
    ...of('note', diff.notes, record, (row) => [noteEdit(row)]),
    ...of('wanted', diff.wanted, record, (row) => [wantedEdit(row)]),
    ...of('signature', diff.signatures, record, (row) => [signatureEdit(row)]),
  ];
  return all.sort((a, b) => RIG_TASKS.indexOf(a.kind) - RIG_TASKS.indexOf(b.kind) || compareNatural(a.key, b.key));
}

/** What the node of a port is called in a rig; undefined when it is not there. */
function nodeName({ key }: Card, { cards }: Rig): string | undefined {
  const node = getRow(cards, cardId('node', key.slice(0, key.lastIndexOf('.'))));
  return node === undefined ? undefined : nameOfCard(node);
}

function placeOrder(now: Table<Position>, old: Table<Position>): (a: UnitTask, b: UnitTask) => number {
  const rank = (name: string) => {
    const id = positionId(name);
    return (getRow(now, id) ?? getRow(old, id))?.order ?? Number.POSITIVE_INFINITY;
  };
  const unitOf = ({ before, after }: UnitTask) => (after ?? before)?.unit ?? '';
  return (a, b) =>
    compareNumbers(rank(a.position), rank(b.position)) ||
    compareNatural(a.position, b.position) ||
    compareNatural(unitOf(a), unitOf(b)) ||
    compareTexts(idOf(a), idOf(b)) ||
    UNIT_TASKS.indexOf(a.kind) - UNIT_TASKS.indexOf(b.kind);
}

const idOf = ({ before, after }: UnitTask) => (after ?? before)?.id ?? '';
const compareNumbers = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
const compareTexts = (a: string, b: string) => (a === b ? 0 : a < b ? -1 : 1);
