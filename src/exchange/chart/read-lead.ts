/** The numbers at the start of a text: slots or values, which only the lines around can tell. */
export interface Lead {
  /** A word such as `Ch` stood before them: they are slots. */
  readonly worded: boolean;
  /** One, both ends of a range, or a list. */
  readonly numbers: readonly number[];
  readonly kind: 'one' | 'range' | 'list';
  readonly percent: boolean;
  /** The mark behind them: `:`, `.`, `)`, `=`, `-` or none. */
  readonly mark: string;
  /** What stands behind them. */
  readonly rest: string;
}

// Sticky patterns with small bounds: each is tried at one place and never looks far.
const OPENING = /[([#]?\s{0,3}/y;
const WORD =
  /(?:dmx[ -]?)?(?:channels?|chan|ch|kanal|kan|slots?|canal|canale|voie|nr|no)[ .:#°º-]{0,3}(?=\d)|dmx[ .:#-]{0,3}(?=\d)|#\s?(?=\d)/iy;
const NUMBER = /\d{1,5}(?![\p{L}\d°º"'])/uy;
const RANGE = /\s{0,3}(?:\.{2,3}|…|[-‐‑‒–—−~→>]|(?:to|bis|thru|through|hasta|al?|à)(?=\s))\s{0,3}(?:ch\.?\s?)?(?=\d)/iy;
const LIST = /\s{0,3}(?:[/+&,]|(?:and|und|et|y|e)(?=\s))\s{0,3}(?:ch\.?\s?)?(?=\d)/iy;
const PERCENT = /\s?%/y;
const CLOSING = /\s{0,3}[)\]]\s?[:.]?|\s{0,3}[:=]|\.(?!\d)|\s[-–—](?=\s)|,(?=\s)/y;
const NO_NUMBER = /\s?-?(?:bits?\b|°|k?hz\b|mm?\b|sec\b|s\b|x\b)/iy;

/** The numbers a text begins with; undefined when it begins with none. */
export function readLead(text: string): Lead | undefined {
  let at = skip(OPENING, text, 0);
  const start = at;
  at = skip(WORD, text, at);
  const worded = at > start;
  const first = numberAt(text, at);
  if (first === undefined) return undefined;
  at = first.end;
  const numbers = [first.value];
  let kind: Lead['kind'] = 'one';
  let percent = skip(PERCENT, text, at) > at;
  if (percent) at = skip(PERCENT, text, at);
  while (numbers.length < 16 && kind !== 'range') {
    const next = follower(text, at, numbers);
    if (next === undefined) break;
    kind = next.kind;
    numbers.push(next.value);
    at = next.end;
  }
  const behind = skip(PERCENT, text, at);
  percent = percent || behind > at;
  const end = skip(CLOSING, text, behind);
  if (end < text.length && end === behind && !/\s/.test(text[end] ?? '')) return undefined;
  return { worded, numbers, kind, percent, mark: text.slice(behind, end).trim(), rest: text.slice(end).trim() };
}

/** The next number of a range or list, when one follows. */
function follower(text: string, at: number, numbers: readonly number[]) {
  const list = skip(LIST, text, at);
  const range = list > at || numbers.length > 1 ? at : skip(RANGE, text, at);
  const end = Math.max(list, range);
  if (end === at) return undefined;
  const next = numberAt(text, end);
  const [first = 0] = numbers;
  if (next === undefined || (range > at && next.value < first)) return undefined;
  return { value: next.value, end: next.end, kind: range > at ? ('range' as const) : ('list' as const) };
}

function numberAt(text: string, at: number): { readonly value: number; readonly end: number } | undefined {
  const end = skip(NUMBER, text, at);
  if (end === at || skip(NO_NUMBER, text, end) > end) return undefined;
  return { value: Number(text.slice(at, end)), end };
}

/** Where the pattern ends that begins at `at`; `at` itself when none does. */
function skip(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  const match = pattern.exec(text);
  return match === null ? at : at + match[0].length;
}
