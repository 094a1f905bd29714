/** Whole numbers as lists write them: `12`, `012`, `12.0` and `12,0` (a spreadsheet's number format). */
export function readWhole(text: string): number | undefined {
  const match = /^\s*(\d{1,9})(?:[.,]0{1,2})?\s*$/.exec(text);
  return match ? Number(match[1]) : undefined;
}

/** A mark that a cell is empty on purpose: a dash, `n/a`, `none`. */
export function isBlankMark(text: string): boolean {
  return /^\s*(?:[-\u2010-\u2015\u2212_./]*|n\/a|n\.a\.|none|nil)\s*$/i.test(text);
}

/** Slots per break as a list writes them: `16`, `16ch`, `16 slots`, `16+4`. Undefined when it is none of these. */
export function readFootprint(text: string): readonly number[] | undefined {
  const bare = text
    .trim()
    .replace(/\s*(?:slots?|ch|chan|chans|channels?|dmx|kan\.?|kan[aä]le?|can[ai][a-z]*)\.?$/iu, '');
  const parts = bare.split('+').map((part) => readWhole(part));
  const numbers = parts.filter((part): part is number => part !== undefined && part <= 512);
  return numbers.length === parts.length && numbers.length <= 4 && numbers.some((part) => part > 0)
    ? numbers
    : undefined;
}

const COUNTED_WORDS =
  'ch|chan|channels?|slots?|kan[aä]le?|kanal|canaux|canales|canali|kanalen|canais|kana[lł][oó]w|kanaler';
const WORDED_FOOTPRINT = new RegExp(
  `(?:^|[^\\p{L}\\p{N}])(\\d{1,3})\\s*-?\\s*(?:${COUNTED_WORDS})(?![\\p{L}\\p{N}])`,
  'iu',
);

/** A footprint that the words of a mode or type name: `Basic 16ch`, `(10 slots)`. */
export function footprintInWords(text: string): number | undefined {
  const slots = Number(WORDED_FOOTPRINT.exec(text)?.[1] ?? 0);
  return slots >= 1 && slots <= 512 ? slots : undefined;
}

/** A quantity: `6`, `x6`, `6x`, `6 pcs`. */
export function readQuantity(text: string): number | undefined {
  const match =
    /^\s*\(?\s*(?:[x×]\s*(\d{1,5})|(\d{1,5})(?:[.,]0{1,2})?\s*(?:[x×]|pcs?\.?|st\.?|stk\.?|szt\.?|pz\.?|off)?)\s*\)?\s*$/iu.exec(
      text,
    );
  return match ? Number(match[1] ?? match[2]) : undefined;
}
