import { scanCells } from '../csv/scan-cells.ts';
import { CHART_LIMITS } from './limits.ts';

/** One line of a chart in cells. */
export interface SplitLine {
  /** 1-based. */
  readonly line: number;
  /** The whole line, spaces at its ends taken off. */
  readonly text: string;
  /** Of a delimited line every cell, empty ones too; of others what two spaces or more keep apart. */
  readonly cells: readonly Cell[];
  readonly delimited: boolean;
  /** Spaces before its text. */
  readonly indent: number;
}

export interface Cell {
  readonly text: string;
  /** Columns it covers: its number in a delimited line, its characters in others. `to` is not counted in. */
  readonly from: number;
  readonly to: number;
}

type ChartDelimiter = '\t' | ';' | '|' | ',';

/** Every line of a text, in order; a cell with line breaks within gives one entry for each of its lines. */
export function splitLines(text: string): readonly SplitLine[] {
  const lines = text.split(/\r\n|\r|\n/);
  const delimiter = delimiterOf(lines);
  if (delimiter === null) return lines.map((each, at) => alignedLine(each, at + 1));
  const framed = delimiter === '|' && isFramed(lines);
  const rows = scanCells(text, delimiter, lines.length + 1).rows;
  return lines.length === 0
    ? []
    : rows.flatMap((row, at) => splitRow(row, (rows[at + 1]?.line ?? lines.length + 1) - 1));

  function splitRow(row: { readonly line: number; readonly cells: readonly string[] }, last: number): SplitLine[] {
    const source = lines[row.line - 1] ?? '';
    // Each as it stands: no chart is that wide, and cells times lines would not end.
    if (row.cells.length > CHART_LIMITS.columns) {
      return lines.slice(row.line - 1, last).map((each, at) => alignedLine(each, row.line + at));
    }
    const plain = last === row.line && (row.cells.length < 2 || source.length > CHART_LIMITS.line);
    if (plain) return [alignedLine(source, row.line)];
    const cells = framed ? withoutFrame(row.cells) : row.cells;
    return linesWithin(cells).map((each, at) => delimitedLine(each, Math.min(row.line + at, last)));
  }
}

function alignedLine(source: string, line: number): SplitLine {
  const long = source.length > CHART_LIMITS.line;
  const pieces = long
    ? []
    : [...source.replace(/\.{4,}/g, (dots) => ' '.repeat(dots.length)).matchAll(/\S+(?: \S+)*/g)];
  const cells = pieces.map((match) => ({ text: match[0], from: match.index, to: match.index + match[0].length }));
  return { line, text: source.trim(), cells, delimited: false, indent: cells[0]?.from ?? 0 };
}

function delimitedLine(cells: readonly string[], line: number): SplitLine {
  const tidy = cells.map((text, at) => ({ text: text.replace(/\s+/g, ' ').trim(), from: at, to: at + 1 }));
  const text = tidy.map((cell) => cell.text).filter((each) => each !== '');
  return { line, text: text.join(' '), cells: tidy, delimited: true, indent: 0 };
}

/** Every line of the table begins with a bar; one without may still leave its first cell empty here and there. */
function isFramed(lines: readonly string[]): boolean {
  const barred = lines.filter((line) => line.includes('|'));
  return barred.filter((line) => /^\s*\|/.test(line)).length > barred.length * 0.95;
}

/** `| 1 | Pan |` has an empty cell at either end. */
function withoutFrame(cells: readonly string[]): readonly string[] {
  const from = cells[0]?.trim() === '' && cells.length > 2 ? 1 : 0;
  const to = cells.at(-1)?.trim() === '' && cells.length > 2 ? cells.length - 1 : cells.length;
  return cells.slice(from, to);
}

/**
 * Cells with line breaks within, line by line. The two first columns hold slots and names, which only break for room: they
 * stand whole in the first line.
 */
function linesWithin(cells: readonly string[]): readonly (readonly string[])[] {
  const parts = cells.map((cell, at) => {
    const pieces = cell.split(/\r\n|\r|\n/);
    return at < 2 && cells.length > 2 ? [pieces.map((piece) => piece.trim()).join(at === 0 ? ',' : ' ')] : pieces;
  });
  const height = parts.reduce((most, pieces) => Math.max(most, pieces.length), 1);
  return Array.from({ length: height }, (_, at) => parts.map((pieces) => pieces[at] ?? ''));
}

// How much of the lines must have a delimiter before it is believed, and how many lines are looked at.
const SHARE: Readonly<Record<ChartDelimiter, number>> = { '\t': 0.3, ';': 0.5, '|': 0.5, ',': 0.6 };
const SAMPLE = 2_000;

function delimiterOf(lines: readonly string[]): ChartDelimiter | null {
  const filled = lines.slice(0, SAMPLE).filter((line) => line.trim() !== '' && line.length <= CHART_LIMITS.line);
  const delimiters = Object.keys(SHARE) as ChartDelimiter[];
  const fits = (delimiter: ChartDelimiter) => {
    const having = filled.filter((line) => line.includes(delimiter));
    return having.length > filled.length * SHARE[delimiter] && (delimiter !== ',' || haveCommaCells(having));
  };
  return delimiters.find(fits) ?? null;
}

/** Commas also stand in sentences and between slots (`1,2 Pan`): between cells, the first cell is short and no list goes on. */
function haveCommaCells(lines: readonly string[]): boolean {
  const first = lines.filter((line) => /^(?:"[^"]{0,20}"|[^,"]{0,14}),/.test(line.trimStart())).length;
  const lists = lines.filter((line) => /^\D{0,10}\d{1,3}\s?,\s?\d{1,3}\s+\D/.test(line)).length;
  return first > lines.length * 0.6 && lists < lines.length * 0.2;
}
