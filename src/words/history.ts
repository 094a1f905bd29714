import type { Change, ToldCells } from '#engine/history/change.ts';
import { type CardField, type CardKind, cellKindOf } from '#engine/model/card.ts';
import { formatCell, isAddressField } from '#engine/model/cell-text.ts';
import { type CellValue, FIELDS, type Field } from '#engine/model/field.ts';
import { cardOfRow } from '#engine/patch/put-back-plan.ts';
import type { ChangeCount, HistoryStep, ToldChange } from '#wire/history.ts';
import { CARD_CHOICE_WORDS, CARD_WORDS, cardCellWords } from './cards.ts';
import { FIELD_WORDS } from './findings.ts';
import { listed } from './listed.ts';
import { counted } from './screens.ts';

export const HISTORY_WORDS = {
  title: 'History',
  about: 'Who changed what, the newest first. Nothing is ever lost: going back is a new edit, and can be undone.',
  somebody: 'Somebody whose account is gone',
  timeline: 'What was done',
  keys: 'Arrows go from line to line, Enter opens one.',
  none: 'Nothing was done yet.',
  noneFound: 'Nothing was done that fits. Ask for less.',
  more: 'Show what was done before that',
  newer: 'The rig has changed since. Show the newest',
  unknownUntil: (day: string) =>
    `Not everything that was done before ${day} is known: older rows of the log are not kept here.`,
  began: (number: number, rig: string) => `began this rig as revision ${number} of ${rig}`,
  between: (from: string, to: string) => (from === to ? from : `${from} to ${to}`),
  allChanges: (count: number) => `Show all ${counted(count, 'change')}`,
  moreChanges: 'Show more changes',
  putBack: 'Put back',
  putBackOf: (sentence: string) => `Put back: ${sentence}`,
  didPutBack: (sentence: string) => `Put back what was changed: ${sentence}.`,
  before: 'The rig before this',
  after: 'The rig after this',
  undo: 'Undo',
  undone: 'Taken back.',
  ofUnit: 'History of this unit',
  ofCell: (field: string) => `History of its ${field}`,
} as const;

export const HISTORY_FILTER_WORDS = {
  name: 'What to show',
  unit: 'Unit',
  unitHint: 'As it is called now, or part of what it was called then.',
  chosenUnit: 'Only this unit, whatever it was called',
  person: 'Person',
  anybody: 'Anybody',
  cell: 'Cell',
  anyCell: 'Any',
  from: 'From day',
  to: 'To day',
  clear: 'Show everything',
} as const;

export const MOMENT_WORDS = {
  title: (moment: string) => `The rig on ${moment}`,
  titleUnknown: 'The rig as it was',
  titleEmpty: 'The rig before anything was done',
  after: (who: string, did: string) => `After ${who} ${did}. You are looking only: nothing here changes the rig.`,
  looking: 'You are looking only: nothing here changes the rig.',
  back: 'Back to the history',
  differs: 'What going back would change',
  same: 'Nothing differs from the rig now.',
  count: (units: number, rest: number) =>
    listed([
      ...(units === 0 ? [] : [`${counted(units, 'thing')} at units`]),
      ...(rest === 0 ? [] : [`${counted(rest, 'thing')} of the rig`]),
    ]),
  units: (count: number) => counted(count, 'unit'),
  find: 'Find a unit',
  noUnits: 'No unit stood in it.',
  notFound: 'No unit is called that.',
  more: (count: number) => `Show ${count.toLocaleString('en-GB')} more`,
  goBack: 'Go back to this…',
  dialog: 'Go back to this moment',
  dialogAbout: 'One edit makes the rig what it was. What was done since stays in the history, and you can undo this.',
  apply: 'Go back',
  done: 'The rig is as it was then.',
  locked: (count: number, names: string) =>
    `${count === 1 ? 'A locked unit stands' : 'Locked units stand'} in the way, whose address would change: ${names}. Unlock ${count === 1 ? 'it' : 'them'} in the sheet, then go back.`,
  unreadable: 'What the server sent cannot be read. Load the page again.',
} as const;

/** What a step did, as one sentence without who and without a full stop: `moved Bar 1 · 4 from 1:101 to 2:1`. */
export function stepSentence({ total, changes, counts }: Pick<HistoryStep, 'total' | 'changes' | 'counts'>): string {
  if (total <= TOLD_ONE_BY_ONE && changes.length === total) return listed(changes.map(changeSentence));
  const shown = counts.slice(0, MOST_KINDS);
  const rest = counts.length > MOST_KINDS ? ['more'] : [];
  const came = (what: 'added' | 'removed') =>
    shown.flatMap((each) => (each.what === what ? [partWords(each.part, each.card, each.count)] : []));
  const [added, removed] = [came('added'), came('removed')];
  const set = shown.flatMap((each) => (each.what === 'set' ? [setCount(each)] : []));
  return listed([
    ...(added.length === 0 ? [] : [`added ${joined(added)}`]),
    ...(removed.length === 0 ? [] : [`removed ${joined(removed)}`]),
    ...set,
    ...rest,
  ]);
}

/** Changes that one sentence tells; of more it counts them. */
const TOLD_ONE_BY_ONE = 2;
const MOST_KINDS = 4;
const joined = (parts: readonly string[]): string => parts.join(', ');

/** What one change changed: `set the circuit of Bar 1 · 4 to “12”`. */
export function changeSentence({ name, long, change }: ToldChange): string {
  switch (change.part) {
    case 'unit':
      return unitSentence(name, change, long);
    case 'card':
      return cardSentence(name, change, long);
    case 'mode':
      return modeSentence(name, change);
    case 'position':
      return rowSentence(`position ${clipped(name)}`, change, {
        added: 'added',
        cells: { order: 'place', name: 'name' },
      });
    case 'universe':
      return valueSentence(`name of universe ${name}`, change, 'label');
    case 'note':
      return rowSentence(`note “${clipped(name)}”`, change, {
        added: 'wrote',
        cells: { text: 'text', order: 'place' },
      });
    case 'wanted':
      return valueSentence(`firmware wanted of ${clipped(name)}`, change, 'version');
    case 'signature':
      return valueSentence(`name of who answers for ${name}`, change, 'person');
  }
}

function unitSentence(name: string, { field, before, after }: Change, long: boolean): string {
  if (field === null) {
    if (after === null) return `removed ${name}`;
    return `added ${name}${addedWith(after as ToldCells)}`;
  }
  const known = FIELDS.find((each) => each === field);
  if (known === undefined || long) return `changed the ${known === undefined ? field : FIELD_WORDS[known]} of ${name}`;
  const [was, is] = [before as CellValue, after as CellValue];
  if (known === 'order') return `moved ${name} in the sheet`;
  if (known === 'along') return `moved ${name} along its run`;
  if (known === 'lock') return is === null ? `unlocked ${name}` : `locked ${name} (${clipped(String(is))})`;
  const unit =
    known === 'address' || !isAddressField(known)
      ? name
      : `${FIELD_WORDS[known].replace('address of ', '')} of ${name}`;
  if (isAddressField(known)) {
    if (was === null) return `gave ${unit} the address ${cellWords(known, is)}`;
    return is === null
      ? `took the address ${cellWords(known, was)} from ${unit}`
      : `moved ${unit} from ${cellWords(known, was)} to ${cellWords(known, is)}`;
  }
  return setSentence(`${FIELD_WORDS[known]} of ${name}`, cellWords(known, was), cellWords(known, is));
}

function addedWith(cells: ToldCells): string {
  const type = typeof cells.type === 'string' && cells.type !== '' ? `, a ${clipped(cells.type)}` : '';
  const address = cells.address === undefined ? '' : `, at ${formatCell('address', cells.address as CellValue)}`;
  return `${type}${address}`;
}

function setSentence(what: string, was: string, is: string): string {
  if (was === '') return `set the ${what} to ${is}`;
  return is === '' ? `cleared the ${what}, which was ${was}` : `set the ${what} from ${was} to ${is}`;
}

function cellWords(field: Field, value: CellValue): string {
  const text = formatCell(field, value);
  return typeof value === 'string' && text !== '' ? `“${clipped(text)}”` : text;
}

function cardSentence(name: string, { row, field, before, after }: Change, long: boolean): string {
  const { kind } = cardOfRow(row);
  if (kind === 'tick') return 'ticked something of the restore sheet';
  const card = cardWords(kind, name);
  if (field === null) return after === null ? `took ${card} out` : `added ${card}`;
  const what = `${cardCellWords(kind, field as CardField)} of ${card}`;
  // Where another card or unit is meant, the value is an id that nobody has ever read.
  if (long || NAMES_ANOTHER.has(field)) return `changed the ${what}`;
  const isChoice = cellKindOf(kind, field as CardField).is === 'choice';
  const value = (told: Change['before']) =>
    isChoice ? (CARD_CHOICE_WORDS[String(told ?? '')] ?? plain(told)) : plain(told);
  return setSentence(what, value(before), value(after));
}

const NAMES_ANOTHER: ReadonlySet<string> = new Set(['sender', 'unit', 'from', 'to']);

const cardWords = (kind: CardKind, name: string): string =>
  name === '' ? `the ${CARD_WORDS[kind]}` : `${CARD_WORDS[kind]} ${clipped(name)}`;

function modeSentence(name: string, { field, before, after }: Change): string {
  if (field === null) return after === null ? `took the mode ${name} out` : `took the mode ${name} in`;
  if (field === 'pin') return `took another revision of the mode ${name}`;
  if (field === 'footprints') return `set the slots of the mode ${name} from ${slots(before)} to ${slots(after)}`;
  return `changed the spelling of the mode ${name}`;
}

const slots = (value: Change['before']): string => (Array.isArray(value) ? value.join(' + ') : 'nothing');

interface RowWords {
  readonly added: string;
  readonly cells: Readonly<Record<string, string>>;
}

function rowSentence(what: string, { field, before, after }: Change, { added, cells }: RowWords): string {
  if (field === null) return after === null ? `took the ${what} out` : `${added} the ${what}`;
  const named = `${cells[field] ?? field} of the ${what}`;
  return field === 'order' ? `changed the ${named}` : setSentence(named, plain(before), plain(after));
}

/** A row of which one cell says it all; a change of another one is only mentioned. */
function valueSentence(what: string, { field, before, after }: Change, main: string): string {
  if (field !== null && field !== main) return `changed what is said beside the ${what}`;
  const value = (told: Change['before']) => plain(field === null ? ((told as ToldCells | null)?.[main] ?? null) : told);
  return setSentence(what, value(before), value(after));
}

const plain = (value: Change['before']): string =>
  value === null ? '' : typeof value === 'string' ? `“${clipped(value)}”` : String(value);

/** So many cells of one kind: `set the address of 12 units`. */
function setCount({ part, card, field, count }: ChangeCount): string {
  const rows = partWords(part, card, count);
  const cell = FIELDS.find((each) => each === field);
  if (part === 'unit' && cell !== undefined) return `set the ${FIELD_WORDS[cell]} of ${rows}`;
  return part === 'card' && card !== null
    ? `set the ${cardCellWords(card, field as CardField)} of ${rows}`
    : `changed ${rows}`;
}

function partWords(part: ChangeCount['part'], card: CardKind | null, count: number): string {
  if (part === 'card') return card === null ? counted(count, 'card') : cardsWords(card, count);
  if (part === 'wanted') return counted(count, 'firmware wish', 'firmware wishes');
  return counted(
    count,
    part === 'universe' ? 'name of a universe' : part,
    part === 'universe' ? 'names of universes' : `${part}s`,
  );
}

function cardsWords(card: CardKind, count: number): string {
  const one = CARD_WORDS[card];
  const many = one.endsWith('y')
    ? `${one.slice(0, -1)}ies`
    : one.startsWith('limit')
      ? 'limits of positions'
      : `${one}s`;
  return counted(count, one, many);
}

const CLIP = 80;
const clipped = (text: string): string => (text.length > CLIP ? `${text.slice(0, CLIP).trimEnd()}…` : text);
