/**
 * Keeps a spreadsheet from taking a person's text for a formula: text that begins with a character that starts one gets
 * an apostrophe in front. So does such text behind apostrophes of its own, which makes `unguardText` the exact inverse.
 * Source: OWASP, CSV Injection (`= + - @`, tab, carriage return, line feed, and the full-width forms).
 */
export function guardText(text: string): string {
  return startsFormula(text, 0) ? `'${text}` : text;
}

/** Takes off what `guardText` put on: `unguardText(guardText(text))` is `text`. */
export function unguardText(text: string): string {
  return text.charCodeAt(0) === APOSTROPHE && startsFormula(text, 1) ? text.slice(1) : text;
}

const APOSTROPHE = 39;
const STARTERS = new Set('=+-@\t\r\n\uff1d\uff0b\uff0d\uff20');

function startsFormula(text: string, from: number): boolean {
  let at = from;
  while (text.charCodeAt(at) === APOSTROPHE) at += 1;
  return STARTERS.has(text.charAt(at));
}
