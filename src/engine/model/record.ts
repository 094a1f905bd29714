import { memoByIdentity } from '#base/memo.ts';
import { rowsOf, type Table } from '#base/table.ts';
import type { Card, CardKind, Numbering } from './card.ts';
import { compareNatural } from './natural-order.ts';
import { nameOfCard, numberIn, textIn, wordIn } from './read-card.ts';

/** The house itself. Metres, null where nobody has said. */
export interface House {
  readonly name: string;
  readonly address: string;
  readonly entry: string;
  readonly width: number | null;
  readonly depth: number | null;
  readonly grid: number | null;
  readonly notes: string;
}

/** What a house says of a position. */
export interface Place {
  /** The folded name of the position. */
  readonly key: string;
  readonly position: string;
  readonly first: Numbering | null;
  /** Metres above the stage. */
  readonly trim: number | null;
  readonly notes: string;
}

export interface Outlet {
  /** Its folded name. */
  readonly key: string;
  readonly name: string;
  readonly position: string;
  readonly carries: 'dmx' | 'network' | null;
  readonly to: string;
  readonly notes: string;
}

/** Stock that hangs nowhere. */
export interface Spare {
  readonly id: string;
  readonly type: string;
  readonly mode: string;
  /** How many; null: nobody has counted. */
  readonly count: number | null;
  readonly where: string;
  readonly notes: string;
}

interface Contact {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly phone: string;
  readonly email: string;
  readonly notes: string;
}

/** What is, or was, wrong with a unit. Days are as somebody wrote them: `2026-11-25`. */
export interface Fault {
  readonly id: string;
  /** The id of the unit. */
  readonly unit: string;
  /** What the unit was called when it was seen: of use once the unit is gone. */
  readonly called: string;
  readonly what: string;
  readonly seenBy: string;
  readonly seenOn: string;
  readonly state: 'open' | 'mended';
  readonly done: string;
  readonly doneBy: string;
  readonly doneOn: string;
}

/** An exchange of the device that a unit is. */
export interface Swap {
  readonly id: string;
  readonly unit: string;
  readonly called: string;
  readonly out: string;
  readonly in: string;
  readonly from: string;
  readonly why: string;
  readonly by: string;
  readonly on: string;
}

/** What was read off a unit on a day. */
export interface Reading {
  readonly id: string;
  readonly unit: string;
  readonly called: string;
  readonly of: 'lamp' | 'service' | 'firmware';
  readonly hours: number | null;
  readonly firmware: string;
  readonly by: string;
  readonly on: string;
}

/** What is hired in. */
export interface Hire {
  readonly id: string;
  readonly item: string;
  readonly unit: string;
  readonly from: string;
  /** How many. */
  readonly count: number;
  readonly due: string;
  /** The day it went back; empty: it has not. */
  readonly returned: string;
  readonly notes: string;
}

/** Something of a restore sheet that is done, or is to stay as it is. */
export interface Tick {
  /** As `tickKey` makes it. */
  readonly key: string;
  readonly state: 'done' | 'stays';
  readonly by: string;
  /** An instant, ISO 8601. */
  readonly at: string;
}

/** What outlives a show: the house, its stock and people, the upkeep of its units, and what was put back. */
export interface RigRecord {
  readonly house: House;
  /** By folded name of the position. */
  readonly places: ReadonlyMap<string, Place>;
  readonly outlets: ReadonlyMap<string, Outlet>;
  readonly spares: readonly Spare[];
  readonly contacts: readonly Contact[];
  /** Oldest first. */
  readonly faults: readonly Fault[];
  readonly swaps: readonly Swap[];
  readonly readings: readonly Reading[];
  /** The one due first first. */
  readonly hires: readonly Hire[];
  readonly ticks: ReadonlyMap<string, Tick>;
}

/** What the cards of a rig say of its record. Any cards at all have an answer; a card without what makes it one is not there. */
export const recordOf: (cards: Table<Card>) => RigRecord = memoByIdentity(readRecord);

function readRecord(cards: Table<Card>): RigRecord {
  const byKind = new Map<CardKind, Card[]>();
  for (const card of rowsOf(cards)) {
    const same = byKind.get(card.kind);
    if (same === undefined) byKind.set(card.kind, [card]);
    else same.push(card);
  }
  const of = <Row>(kind: CardKind, read: (card: Card) => Row | undefined): Row[] =>
    (byKind.get(kind) ?? []).sort(byName).flatMap((card) => read(card) ?? []);
  const byKey = <Row extends { readonly key: string }>(rows: readonly Row[]) =>
    new Map(rows.map((row) => [row.key, row] as const));
  const inTime = <Row>(rows: Row[], dayOf: (row: Row) => string): readonly Row[] =>
    rows.sort((a, b) => compareTexts(dayOf(a), dayOf(b)));
  return Object.freeze({
    house: houseOf(byKind.get('venue')?.[0]),
    places: byKey(of('place', placeOf)),
    outlets: byKey(of('outlet', outletOf)),
    spares: of('spare', spareOf),
    contacts: of('contact', contactOf),
    faults: inTime(of('fault', faultOf), ({ seenOn }) => seenOn),
    swaps: inTime(of('swap', swapOf), ({ on }) => on),
    readings: inTime(of('reading', readingOf), ({ on }) => on),
    hires: inTime(of('hire', hireOf), ({ due }) => due),
    ticks: byKey(of('tick', tickOf)),
  });
}

const compareTexts = (a: string, b: string) => (a === b ? 0 : a < b ? -1 : 1);
const byName = (a: Card, b: Card) =>
  compareNatural(String(a.cells.type ?? nameOfCard(a)), String(b.cells.type ?? nameOfCard(b))) ||
  compareTexts(a.id, b.id);

const houseOf = (card: Card | undefined): House =>
  Object.freeze({
    name: card === undefined ? '' : textIn(card, 'name'),
    address: card === undefined ? '' : textIn(card, 'address'),
    entry: card === undefined ? '' : textIn(card, 'entry'),
    width: numberIn(card, 'width'),
    depth: numberIn(card, 'depth'),
    grid: numberIn(card, 'grid'),
    notes: card === undefined ? '' : textIn(card, 'notes'),
  });

function placeOf(card: Card): Place | undefined {
  const position = textIn(card, 'position');
  if (position === '') return undefined;
  return Object.freeze({
    key: card.key,
    position,
    first: wordIn<Numbering>(card, 'first'),
    trim: numberIn(card, 'trim'),
    notes: textIn(card, 'notes'),
  });
}

function outletOf(card: Card): Outlet | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    key: card.key,
    name,
    position: textIn(card, 'position'),
    carries: wordIn<NonNullable<Outlet['carries']>>(card, 'carries'),
    to: textIn(card, 'to'),
    notes: textIn(card, 'notes'),
  });
}

function spareOf(card: Card): Spare | undefined {
  const type = textIn(card, 'type');
  if (type === '') return undefined;
  return Object.freeze({
    id: card.key,
    type,
    mode: textIn(card, 'mode'),
    count: numberIn(card, 'count'),
    where: textIn(card, 'where'),
    notes: textIn(card, 'notes'),
  });
}

function contactOf(card: Card): Contact | undefined {
  const name = textIn(card, 'name');
  if (name === '') return undefined;
  return Object.freeze({
    id: card.key,
    name,
    role: textIn(card, 'role'),
    phone: textIn(card, 'phone'),
    email: textIn(card, 'email'),
    notes: textIn(card, 'notes'),
  });
}

function faultOf(card: Card): Fault | undefined {
  const what = textIn(card, 'what');
  if (what === '') return undefined;
  return Object.freeze({
    id: card.key,
    unit: textIn(card, 'unit'),
    called: textIn(card, 'called'),
    what,
    seenBy: textIn(card, 'seenBy'),
    seenOn: textIn(card, 'seenOn'),
    // A fault of which nobody has said that it is mended is open.
    state: wordIn<Fault['state']>(card, 'state') ?? 'open',
    done: textIn(card, 'done'),
    doneBy: textIn(card, 'doneBy'),
    doneOn: textIn(card, 'doneOn'),
  });
}

function swapOf(card: Card): Swap | undefined {
  const unit = textIn(card, 'unit');
  if (unit === '') return undefined;
  return Object.freeze({
    id: card.key,
    unit,
    called: textIn(card, 'called'),
    out: textIn(card, 'out'),
    in: textIn(card, 'in'),
    from: textIn(card, 'from'),
    why: textIn(card, 'why'),
    by: textIn(card, 'by'),
    on: textIn(card, 'on'),
  });
}

function readingOf(card: Card): Reading | undefined {
  const of = wordIn<Reading['of']>(card, 'of');
  if (of === null) return undefined;
  return Object.freeze({
    id: card.key,
    unit: textIn(card, 'unit'),
    called: textIn(card, 'called'),
    of,
    hours: numberIn(card, 'hours'),
    firmware: textIn(card, 'firmware'),
    by: textIn(card, 'by'),
    on: textIn(card, 'on'),
  });
}

function hireOf(card: Card): Hire | undefined {
  const item = textIn(card, 'item');
  if (item === '') return undefined;
  return Object.freeze({
    id: card.key,
    item,
    unit: textIn(card, 'unit'),
    from: textIn(card, 'from'),
    count: numberIn(card, 'count') ?? 1,
    due: textIn(card, 'due'),
    returned: textIn(card, 'returned'),
    notes: textIn(card, 'notes'),
  });
}

function tickOf(card: Card): Tick | undefined {
  const state = wordIn<Tick['state']>(card, 'state');
  if (state === null) return undefined;
  return Object.freeze({ key: card.key, state, by: textIn(card, 'by'), at: textIn(card, 'at') });
}
