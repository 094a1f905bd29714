import type { LeftOutReason } from '#engine/draft/chart-reading.ts';
import { type Block, type Fate, type Fields, NO_FIELDS, type RawRow } from './blocks.ts';
import { chained } from './chained-values.ts';
import { readColumnHeading, readSubHeading } from './column-heading.ts';
import { CHART_LIMITS } from './limits.ts';
import { framedFields, freeFields, type Tell } from './line-fields.ts';
import { readModeHeading } from './mode-heading.ts';
import { isPageNumber } from './page-lines.ts';
import { type Lead, readLead } from './read-lead.ts';
import { newReader, type Reader } from './reader.ts';
import type { SplitLine } from './split-lines.ts';
import { tellsSlots } from './tell-slots.ts';

// How far below a heading is looked for what its columns hold, and how far a name may stand above its chart.
const LOOK_BELOW = 40;
const NAME_ABOVE = 3;
const TITLE_LENGTH = 50;

/** The charts of a text and what became of each of its lines, by index. Every line gets exactly one fate. */
export function readBlocks(lines: readonly SplitLine[]): {
  readonly blocks: readonly Block[];
  readonly fates: readonly Fate[];
} {
  const reader = newReader(lines);
  lines.forEach((line, at) => {
    reader.fates.push(readLine(reader, line, at));
  });
  return { blocks: reader.blocks, fates: reader.fates };
}

const leftOut = (reason: LeftOutReason): Fate => ({ kind: 'left-out', reason });

function readLine(reader: Reader, line: SplitLine, at: number): Fate {
  if (line.text === '') return { kind: 'blank' };
  if (line.text.length > CHART_LIMITS.line) return leftOut('too-long');
  if (!/[\p{L}\d]/u.test(line.text)) return leftOut('decoration');
  return readPage(reader, line) ?? readHeading(reader, line, at) ?? readFields(reader, line, at);
}

/** Rows and values differ from others by their numbers alone as well (`1 Red 1`, `4 Red 2`), and so do modes' headings. */
function readPage(reader: Reader, line: SplitLine): Fate | undefined {
  if (!reader.pages.isPage(line) || readModeHeading(line.text) !== undefined) return undefined;
  if (isPageNumber(line.text)) return leftOut('page');
  const lead = readLead(line.cells.find((cell) => cell.text !== '')?.text ?? '');
  if (lead === undefined) return leftOut('page');
  const inChart =
    line.delimited || lead.worded || lead.rest === '' || lead.kind !== 'one' || follows(reader, lead.numbers);
  return inChart ? undefined : leftOut('page');
}

/** Numbers that go on with the slots or values so far. */
function follows({ pending, row, ...reader }: Reader, [first = 0]: readonly number[]): boolean {
  if (pending !== null || row === null || first <= 1) return true;
  return first === highestOf(reader) + 1 || first === (row.values.at(-1)?.to ?? -1) + 1;
}

function readHeading(reader: Reader, line: SplitLine, at: number): Fate | undefined {
  const before = reader.frame === null ? undefined : reader.lines[reader.headAt];
  if (before?.text === line.text && before.indent === line.indent) {
    reader.headedAt = at;
    return { kind: 'heading' };
  }
  const below = reader.lines.slice(at + 1, at + 1 + LOOK_BELOW);
  const frame = readColumnHeading(line, below);
  if (frame !== undefined) {
    reader.frame = frame === 'words' ? null : frame;
    reader.headedAt = at;
    reader.headAt = at;
    return { kind: 'heading' };
  }
  const sub =
    reader.frame !== null && reader.headedAt === at - 1 ? readSubHeading(reader.frame, line, below) : undefined;
  if (sub !== undefined) {
    reader.frame = sub;
    return { kind: 'heading' };
  }
  const filled = line.cells.filter((cell) => cell.text !== '').length;
  const mode = filled <= 2 ? readModeHeading(line.text) : undefined;
  if (mode === undefined) return undefined;
  reader.pending = mode;
  return { kind: 'heading' };
}

function readFields(reader: Reader, line: SplitLine, at: number): Fate {
  const tell: Tell = (lead, of) => tellsSlots(lead, contextOf(reader, of, at));
  const { frame } = reader;
  const framed = frame !== null && frame.delimited === line.delimited ? framedFields(line, frame, tell) : undefined;
  const fields = framed ?? freeFields(line, tell);
  if (fields.slots.some((slots) => slots.length > 0)) return takeSlots(reader, fields, line, at);
  if (fields.stretch !== null) return takeValue(reader, fields, line);
  if (framed !== undefined && framed.mark === '-' && framed.name !== '') return leftOut('in-no-mode');
  return takeText(reader, fields, line, at, framed === undefined ? 'free' : 'framed');
}

const COUNTED_BELOW = 64;

/** What the next lines begin with, one by one. */
function* leadsBelow(lines: readonly SplitLine[], at: number): Generator<Lead | undefined> {
  for (const line of lines.slice(at + 1, at + 1 + COUNTED_BELOW)) {
    yield readLead(line.cells.find((cell) => cell.text !== '')?.text ?? '');
  }
}

function contextOf(reader: Reader, line: SplitLine, at: number) {
  const { row, pending, worded, indent } = reader;
  return {
    row,
    startsAnew: pending !== null || reader.blocks.length === 0,
    highest: highestOf(reader),
    worded,
    indented: line.indent > indent && !line.delimited,
    leadsBelow: () => leadsBelow(reader.lines, at),
  };
}

const highestOf = ({ blocks }: Pick<Reader, 'blocks'>): number => {
  const block = blocks.at(-1);
  return block === undefined ? 0 : block.highest;
};

const ELSEWHERE =
  /^\W*(?:(?:as|same as|like|see)\b|identical|wie (?:in|bei|oben)|siehe\b|identisch|comme\b|voir\b|como en|igual que|ver\b|come (?:in|nel)|vedi\b)/i;

function takeSlots(reader: Reader, fields: Fields, line: SplitLine, at: number): Fate {
  const all = fields.slots.flat();
  if (all.some((slot) => slot > 512)) return leftOut('past-512');
  if (reader.slots + all.length > CHART_LIMITS.slots) return leftOut('chart-full');
  if (goesOn(reader, fields)) return takeValue(reader, { ...fields, text: nameAndText(reader, fields) }, line);
  const block = blockFor(reader, fields, at);
  block.highest = all.reduce((most, slot) => Math.max(most, slot), block.highest);
  if (ELSEWHERE.test(fields.name === '' ? fields.text : fields.name)) return leftOut('elsewhere');
  const row: RawRow = {
    slots: fields.slots,
    name: fields.name === '' && fields.stretch === null ? fields.text : fields.name,
    attribute: fields.attribute,
    break: fields.break,
    default: fields.default,
    highlight: fields.highlight,
    values: fields.stretch === null ? [] : chained(fields.stretch, fields.text),
    notes: fields.stretch === null && fields.name !== '' && fields.text !== '' ? [fields.text] : [],
    unread: fields.unread === '' ? [] : [fields.unread],
    lines: [line.line],
  };
  block.rows.push(row);
  reader.slots += all.length;
  reader.worded = fields.worded && (reader.worded || block.rows.length === 1);
  reader.indent = line.indent;
  reader.row = row;
  reader.wrapped = 0;
  reader.title = null;
  return { kind: 'row', row };
}

/** The slots of the row above again, with more values of it. */
function goesOn(reader: Reader, fields: Fields): boolean {
  const { row } = reader;
  if (row === null || fields.stretch === null || row.values.length === 0 || reader.pending !== null) return false;
  const same = row.slots.length === fields.slots.length && String(row.slots) === String(fields.slots);
  return same && fields.stretch.from > (row.values.at(-1)?.to ?? 0);
}

const nameAndText = (reader: Reader, { name, text }: Fields) =>
  [name === reader.row?.name ? '' : name, text].filter((each) => each !== '').join(' ');

/** The chart that these slots belong to: a new one where the numbers start again. */
function blockFor(reader: Reader, fields: Fields, at: number): Block {
  const slots = fields.slots.flat();
  const current = reader.blocks.at(-1);
  // Each break counts its slots from 1.
  if (current !== undefined && reader.pending === null && fields.break !== (reader.row?.break ?? '')) return current;
  const lowest = Math.min(...slots);
  const modes = reader.frame?.modes ?? [''];
  const first = current?.rows[0]?.slots.flat().reduce((least, slot) => Math.min(least, slot), 512);
  const again = current !== undefined && (lowest === first || (first === undefined && lowest <= 1));
  const restarts = reader.pending !== null ? lowest <= (current?.highest ?? 0) : again && current.highest > lowest;
  const otherModes = current !== undefined && current.modes.length !== Math.max(1, modes.length);
  if (current !== undefined && !restarts && !otherModes) return current;
  const name = reader.pending?.name ?? titleFor(reader, at);
  const block: Block = { name, footprint: reader.pending?.footprint ?? null, modes, rows: [], highest: 0 };
  reader.blocks.push(block);
  reader.pending = null;
  return block;
}

/** A line of words near above a chart is its name, once there is more than one chart. */
function titleFor(reader: Reader, at: number): string {
  const { title, headedAt, blocks, firstTitle } = reader;
  const near =
    title !== null && (at - title.at <= NAME_ABOVE || (headedAt > title.at && headedAt - title.at <= NAME_ABOVE));
  const [first] = blocks;
  if (first === undefined) reader.firstTitle = near ? title : null;
  if (title === null || !near || first === undefined) return '';
  if (firstTitle !== null && first.name === '') {
    first.name = firstTitle.text;
    reader.fates[firstTitle.at] = { kind: 'heading' };
  }
  reader.fates[title.at] = { kind: 'heading' };
  return title.text;
}

function takeValue(reader: Reader, fields: Fields, line: SplitLine): Fate {
  const { row } = reader;
  if (row === null || fields.stretch === null) return leftOut('no-row');
  if (row.values.length >= CHART_LIMITS.values) return leftOut('too-many-values');
  const text = fields.slots.length > 0 && fields.slots.flat().length > 0 ? fields.text : nameAndText(reader, fields);
  row.values.push(...chained(fields.stretch, text));
  row.lines.push(line.line);
  reader.wrapped = 0;
  return { kind: 'range', row };
}

/** A line without slots and values: the rest of the line above, or words of the manual. */
function takeText(reader: Reader, fields: Fields, line: SplitLine, at: number, layout: 'free' | 'framed'): Fate {
  const { row } = reader;
  const text = [fields.name, fields.text, fields.unread].filter((each) => each !== '').join(' ');
  const before = reader.fates[at - 1]?.kind;
  const behind = before === 'row' || before === 'range' || before === 'continuation';
  if (row !== null && behind && row.name === '' && row.values.length === 0) {
    row.name = text;
    row.lines.push(line.line);
    return { kind: 'continuation', row };
  }
  if (row !== null && before === 'range' && layout === 'free' && !line.delimited && isBare(row)) {
    goOn(row, { ...NO_FIELDS, text }, text);
    row.lines.push(line.line);
    return { kind: 'continuation', row };
  }
  const indented = line.delimited ? layout === 'framed' && fields.name === '' : line.indent > reader.indent;
  const wraps = indented || /^[\p{Ll}(]/u.test(text);
  if (
    row !== null &&
    behind &&
    wraps &&
    reader.wrapped < CHART_LIMITS.wrapped &&
    !(reader.pages.comesAgain(line) && !indented)
  ) {
    reader.wrapped += 1;
    goOn(row, fields, text);
    row.lines.push(line.line);
    return { kind: 'continuation', row };
  }
  if (text.length <= TITLE_LENGTH) reader.title = { at, text };
  return leftOut(reader.pages.comesAgain(line) ? 'page' : 'text');
}

/** The last values stand alone: their words are on a line of their own. */
const isBare = (row: RawRow) => {
  const last = row.values.at(-1);
  return last !== undefined && last.text === '' && !(last.from === 0 && last.to >= 255);
};

function goOn(row: RawRow, fields: Fields, text: string): void {
  const last = row.values.at(-1);
  if (fields.name !== '' && row.values.length <= 1) {
    row.name = `${row.name} ${fields.name}`;
    const more = [fields.text, fields.unread].filter((each) => each !== '').join(' ');
    if (more !== '') goOn(row, { ...NO_FIELDS, text: more }, more);
    return;
  }
  if (last !== undefined) last.text = last.text === '' ? text : `${last.text} ${text}`;
  else row.notes.push(text);
}
