import { foldHeading } from './fold-heading.ts';
import { hintsOf } from './heading-words.ts';

// How sums, pages and universes are written in the middle of a list. Source: common practice.
const TOTALS =
  /^(?:sub ?|grand |zwischen|sous |gesamt|end)?(?:totals?|totale|totaux|totaal|sum|summe|summa|somme|somma|suma|soma|gesamt|gesamtsumme|insgesamt|subtotal|razem|lacznie|i alt|ialt|totalt|sammenlagt|ensemble|zusammen)(?: .*)?$/;
const PAGES =
  /^(?:page|seite|blatt|sheet|pagina|strona|sida|side|p)\s*\d+(?:\s*(?:of|von|sur|de|di|van|z|av|af|\/)?\s*\d+)?$/;
const UNIVERSES =
  /^(?:dmx )?(?:universe|universum|univers|universo|uniwersum|univ|dmx linie|dmx)\s*(?:no |nr |n )?(\d{1,5})$/;

const COUNTED =
  /^\d+ (?:units?|fixtures?|lamps?|lanterns?|instruments?|gerate|scheinwerfer|projecteurs?|appareils?|aparatos|apparecchi|proiettori|armaturen|aparelhos|urzadzen\w*|armaturer)$/;

/** Whether a cell says that its line adds up others: `Total`, `Summe`, `Zwischensumme:`, `104 units`. */
export function isTotalWord(text: string): boolean {
  const folded = foldHeading(text);
  return TOTALS.test(folded) || COUNTED.test(folded);
}

/** A page number, as printing puts it between the lines. */
export const isPageWord = (text: string) => PAGES.test(foldHeading(text));

/** The universe that a line names for the lines below it. */
export function universeNamed(text: string): number | undefined {
  const match = UNIVERSES.exec(foldHeading(text));
  return match ? Number(match[1]) : undefined;
}

/** The position a heading line names: without the rule lines, the colon and the word for position around it. */
export function positionNamed(text: string): string {
  const bare = text.replace(/^[\s\-–—=*_#>]+|[\s\-–—=*_#<:]+$/gu, '');
  const colon = /^([^:]{2,20}):\s*(\S.*)$/su.exec(bare);
  return colon && isPositionWord(colon[1] as string) ? (colon[2] as string) : bare || text.trim();
}

/** Whether a cell is the word for a position itself. */
export const isPositionWord = (text: string) => hintsOf(text)[0]?.meaning === 'position';
