import { type Fields, NO_FIELDS } from './blocks.ts';
import { type Frame, isDash, placed, type Role } from './column-heading.ts';
import { type Lead, readLead } from './read-lead.ts';
import { readValue, splitName } from './read-value.ts';
import type { SplitLine } from './split-lines.ts';

/** Whether the numbers a line begins with are slots or values, as the lines before tell. */
export type Tell = (lead: Lead, line: SplitLine) => 'slots' | 'value';

/** The slots that a lead names: a range counts up, more than one line may hold is no row. */
function slotsOf(lead: Lead): readonly number[] {
  const [first = 0, last = first] = lead.numbers;
  if (lead.kind !== 'range' || last - first > 511) return lead.numbers;
  return Array.from({ length: last - first + 1 }, (_, at) => first + at);
}

/** A line under a heading of columns; undefined when its cells do not suit it. */
export function framedFields(line: SplitLine, frame: Frame, tell: Tell): Fields | undefined {
  const texts = new Map<Role, string[]>();
  const slotCells: string[] = frame.columns.filter((column) => column.role === 'slot').map(() => '');
  const slotAt = new Map<number, number>();
  frame.columns.forEach((column, at) => {
    if (column.role === 'slot') slotAt.set(at, slotAt.size);
  });
  for (const { cell, column } of placed(line, frame)) {
    if (cell.text === '') continue;
    const slot = slotAt.get(column);
    if (slot !== undefined) slotCells[slot] = [slotCells[slot] ?? '', cell.text].join(' ').trim();
    else {
      const role = frame.columns[column]?.role ?? 'other';
      texts.set(role, [...(texts.get(role) ?? []), cell.text]);
    }
  }
  const leads = slotCells.map((text) => (text === '' || isDash(text) ? null : readLead(text)));
  if (leads.some((lead) => lead !== null && (lead === undefined || lead.rest !== '' || lead.percent))) return undefined;
  const [first] = leads;
  if (!frame.delimited && frame.modes.length === 1 && first != null && tell(first, line) === 'value') return undefined;
  return {
    ...NO_FIELDS,
    ...stretchOf(texts),
    ...namesOf(texts),
    ...slotsIn(leads),
    mark: slotCells.some(isDash) ? '-' : '',
  };
}

const slotsIn = (leads: readonly (Lead | null | undefined)[]) => ({
  slots: leads.map((lead) => (lead == null ? [] : slotsOf(lead))),
  worded: leads.some((lead) => lead?.worded === true),
});

const joined = (texts: ReadonlyMap<Role, readonly string[]>, role: Role) => (texts.get(role) ?? []).join(' ');

const namesOf = (texts: ReadonlyMap<Role, readonly string[]>) => {
  const [name = '', ...more] = texts.get('name') ?? [];
  const named = more.length === 0 ? name : `${name} (${more.join(', ')})`;
  return {
    name: named,
    attribute: joined(texts, 'attribute'),
    break: breakIn(joined(texts, 'break')),
    default: joined(texts, 'default'),
    highlight: joined(texts, 'highlight'),
  };
};

// Break 1 is the usual one, and stands as none.
const breakIn = (text: string) => (/^[2-4]$/.test(text) ? text : '');

function stretchOf(texts: ReadonlyMap<Role, readonly string[]>): Pick<Fields, 'stretch' | 'text' | 'unread'> {
  const text = [joined(texts, 'text'), joined(texts, 'other')].filter((each) => each !== '').join(' ');
  const [from, to] = [readValue(joined(texts, 'from')), readValue(joined(texts, 'to'))];
  if (from !== undefined && to !== undefined && from.stretch.from <= to.stretch.to) {
    return { stretch: { from: from.stretch.from, to: to.stretch.to, percent: from.stretch.percent }, text, unread: '' };
  }
  const value = joined(texts, 'value');
  const percent = joined(texts, 'percent');
  const read =
    readValue(value) ??
    (value === '' ? readValue(/%$/.test(percent) || percent === '' ? percent : `${percent}%`) : undefined);
  if (read === undefined) return { stretch: null, text, unread: isDash(value) ? '' : value };
  return { stretch: read.stretch, text: [read.rest, text].filter((each) => each !== '').join(' '), unread: '' };
}

/** A line without a heading that says what its cells mean. */
export function freeFields(line: SplitLine, tell: Tell): Fields {
  const cells = line.cells.map((cell) => cell.text).filter((text) => text !== '');
  const [first = '', ...others] = cells;
  const lead = readLead(first);
  if (lead === undefined) return { ...NO_FIELDS, text: cells.join(' ') };
  const inFirstColumn = !line.delimited || line.cells[0]?.text !== '';
  const kind = inFirstColumn ? tell(lead, line) : 'value';
  const pieces = [lead.rest, ...others].filter((piece) => piece !== '');
  if (kind === 'slots') {
    return { ...NO_FIELDS, ...afterSlots(pieces), slots: [slotsOf(lead)], worded: lead.worded, mark: lead.mark };
  }
  const value = readValue(first);
  if (value === undefined) return { ...NO_FIELDS, text: cells.join(' ') };
  const text = [value.rest, ...others].filter((piece) => piece !== '').join(' ');
  return { ...NO_FIELDS, stretch: value.stretch, text };
}

/** What stands behind the slots: a name, values, words about them. */
function afterSlots(pieces: readonly string[]): Pick<Fields, 'name' | 'stretch' | 'text'> {
  const [only = ''] = pieces;
  if (pieces.length < 2) {
    const alone = readValue(only);
    if (alone !== undefined && alone.rest === '') return { name: '', stretch: alone.stretch, text: '' };
    const { name, stretch, rest } = splitName(only);
    return { name, stretch, text: rest };
  }
  const at = pieces.findIndex((piece) => readValue(piece) !== undefined);
  const value = at < 0 ? undefined : readValue(pieces[at] ?? '');
  if (value === undefined) return { name: only, stretch: null, text: pieces.slice(1).join(' ') };
  const words = pieces.filter((_, index) => index !== at);
  const [name = '', ...texts] = at === 0 ? [value.rest, ...words].filter((each) => each !== '') : words;
  const rest = at === 0 ? '' : value.rest;
  return { name, stretch: value.stretch, text: [rest, ...texts].filter((each) => each !== '').join(' ') };
}
