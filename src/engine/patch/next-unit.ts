const TRAILING_NUMBER = /^(.*?)(\d{1,9})$/s;
const NUMBER_AND_LETTER = /^(.*\d)([a-yA-Y])$/s;
const LONE_LETTER = /^[a-yA-Y]$/;

/** What follows a unit number: 4 then 5, L9 then L10, 4A then 4B; undefined where nothing does. [PL8] */
export function nextInSeries(unit: string): string | undefined {
  const number = TRAILING_NUMBER.exec(unit);
  if (number !== null) return `${number[1]}${addOne(number[2] ?? '')}`;
  const lettered = NUMBER_AND_LETTER.exec(unit);
  if (lettered !== null) return `${lettered[1]}${nextLetter(lettered[2] ?? '')}`;
  return LONE_LETTER.test(unit) ? nextLetter(unit) : undefined;
}

/** Keeps leading zeros: 09 then 10, 007 then 008. */
const addOne = (digits: string) => String(Number(digits) + 1).padStart(digits.length, '0');

const nextLetter = (letter: string) => String.fromCharCode(letter.charCodeAt(0) + 1);

/**
 * The number of a unit put beside `unit`: the next one when `unit` is the last of its position, else the first free suffix
 * (4 then 4A: an inserted unit does not renumber the others; common practice). `before` holds the folded units the position
 * has, `taken` those and the ones given out since. Empty where `unit` has no number to go by. [PL11]
 */
export function unitBeside(unit: string, before: ReadonlySet<string>, taken: ReadonlySet<string>): string {
  const match = /^(\D*)(\d{1,9})([a-z]?)$/i.exec(unit.trim());
  if (match === null) return '';
  const [, prefix = '', digits = '', suffix = ''] = match;
  if (suffix === '' && !hasLater(prefix, Number(digits), before)) return nextFree(prefix + digits, taken);
  const from = suffix === '' ? 'A'.charCodeAt(0) : suffix.toUpperCase().charCodeAt(0) + 1;
  for (let code = from; code <= 'Z'.charCodeAt(0); code++) {
    const candidate = prefix + digits + String.fromCharCode(code);
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
  return '';
}

function nextFree(unit: string, taken: ReadonlySet<string>): string {
  let next = nextInSeries(unit) ?? '';
  while (next !== '' && taken.has(next.toLowerCase())) next = nextInSeries(next) ?? '';
  return next;
}

function hasLater(prefix: string, number: number, units: ReadonlySet<string>): boolean {
  for (const unit of units) {
    const match = /^(\D*)(\d{1,9})/.exec(unit);
    if (match !== null && match[1] === prefix.toLowerCase() && Number(match[2]) > number) return true;
  }
  return false;
}
