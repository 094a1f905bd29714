import { oneLine } from './cell-text.ts';

/** One line of a row's ranges. */
export interface RangeLine {
  /** From 1. */
  readonly line: number;
  /** 8 bit steps, both counted in. */
  readonly from: number;
  readonly to: number;
  readonly name: string;
  /** The attribute that starts here; empty: what it does goes on. */
  readonly attribute: string;
}

export type RangeTrouble =
  | { readonly kind: 'unreadable-range' | 'range-too-high'; readonly line: number; readonly text: string }
  | { readonly kind: 'ranges-overlap' | 'ranges-gap'; readonly from: number; readonly to: number };

const LAST = 255;

/**
 * The lines of a row's ranges, ascending, no two of which start at one value, and what is wrong with them. A line is
 * `0-10 Closed`, `11 - 127: Strobe [Shutter1Strobe]`, `128..255 Open`, `>127 On`, `5 One value` or `0-49% Half`. An empty
 * pair of brackets at its end starts nothing.
 */
export function readRanges(text: string): {
  readonly lines: readonly RangeLine[];
  readonly troubles: readonly RangeTrouble[];
} {
  const lines: RangeLine[] = [];
  const troubles: RangeTrouble[] = [];
  for (const [at, raw] of text.split(/\r\n|[\n\r]/).entries()) {
    // Runs of white space are taken out first: the patterns below would try every way to split a long one.
    const line = oneLine(raw);
    if (line === '') continue;
    const read = readLine(line);
    if (typeof read === 'string') troubles.push({ kind: read, line: at + 1, text: line });
    else lines.push({ ...read, line: at + 1 });
  }
  lines.sort((a, b) => a.from - b.from || a.line - b.line);
  return { lines: withoutTwins(lines), troubles: [...troubles, ...coverTroubles(lines)] };
}

const withoutTwins = (lines: readonly RangeLine[]) => lines.filter((line, at) => line.from !== lines[at - 1]?.from);

const DASH = String.raw`(?:-|–|—|~|\.\.+|…|to\b)`;
const NUMBER = String.raw`\d{1,10}`;
const SPAN = new RegExp(
  String.raw`^(${NUMBER})\s*(%?)\s*(?:${DASH}\s*(${NUMBER})\s*(%(?=$|[\s:=]))?)?(?![\d.%\p{L}]|\s*${DASH}\s*\d)(.*)$`,
  'su',
);
const BOUND = new RegExp(String.raw`^(>=?|≥|<=?|≤)\s*(${NUMBER})\s*(%(?=$|[\s:=]))?(?![\d.%\p{L}])(.*)$`, 'su');

type Read = Omit<RangeLine, 'line'>;

function readLine(line: string): Read | 'unreadable-range' | 'range-too-high' {
  const [, bracket] = /\[([^[\]]*)\]$/.exec(line) ?? [];
  const front = bracket === undefined ? line : line.slice(0, line.lastIndexOf('[')).trim();
  const span = spanOf(front);
  if (span === undefined || span.from > span.to) return 'unreadable-range';
  if (span.to > LAST) return 'range-too-high';
  return { from: span.from, to: span.to, name: span.rest.trim(), attribute: (bracket ?? '').trim() };
}

interface Span {
  readonly from: number;
  readonly to: number;
  readonly rest: string;
}

function spanOf(text: string): Span | undefined {
  const bound = BOUND.exec(text);
  if (bound !== null) return boundSpan(bound);
  const [, first, firstSign = '', last, lastSign = '', rest = ''] = SPAN.exec(text) ?? [];
  if (first === undefined) return undefined;
  const isPercent = (last === undefined ? firstSign : lastSign) === '%';
  if (!isPercent && firstSign === '%') return undefined;
  const to = last ?? first;
  const named = { rest: rest.replace(/^\s*(?:[:=]|[-–—](?=\s))?/u, '') };
  if (!isPercent) return { from: Number(first), to: Number(to), ...named };
  return { from: firstOfPercent(Number(first)), to: lastOfPercent(Number(to)), ...named };
}

function boundSpan([, sign = '', number = '', percent, rest = '']: RegExpExecArray): Span {
  const isPercent = percent === '%';
  const first = isPercent ? firstOfPercent(Number(number)) : Number(number);
  const last = isPercent ? lastOfPercent(Number(number)) : Number(number);
  const named = { rest: rest.replace(/^\s*[:=]?/u, '') };
  if (sign === '>') return { from: last + 1, to: Math.max(LAST, last + 1), ...named };
  if (sign === '<') return { from: 0, to: first - 1, ...named };
  return sign.startsWith('<') || sign === '≤' ? { from: 0, to: last, ...named } : { from: first, to: LAST, ...named };
}

// 0-49 % and 50-100 % meet at 127 and 128: a whole percent lasts until the next one begins.
const firstOfPercent = (percent: number) => Math.ceil((percent * LAST) / 100);
const lastOfPercent = (percent: number) => (percent === 100 ? LAST : firstOfPercent(percent + 1) - 1);

/** Values that two of the lines name, or none. Without lines there is nothing to cover. */
function coverTroubles(lines: readonly RangeLine[]): RangeTrouble[] {
  if (lines.length === 0) return [];
  const troubles: RangeTrouble[] = [];
  let next = 0;
  for (const { from, to } of lines) {
    if (from > next) troubles.push({ kind: 'ranges-gap', from: next, to: from - 1 });
    if (from < next) troubles.push({ kind: 'ranges-overlap', from, to: Math.min(to, next - 1) });
    next = Math.max(next, to + 1);
  }
  if (next <= LAST) troubles.push({ kind: 'ranges-gap', from: next, to: LAST });
  return troubles;
}
