import type { Layout, RememberedMapping } from '#engine/list/layout.ts';
import { MEANINGS, type Meaning } from '#engine/list/meaning.ts';
import { foldHeading } from './fold-heading.ts';

/**
 * Tells lists with the same headings apart from others, whatever case and accents they are written in. Null when the list
 * has no headings, or is a sheet of ours: there is nothing to remember then. At most 40 characters.
 */
export function mappingKey(layout: Layout): string | null {
  if (layout.headingRow === null || layout.form === 'own') return null;
  const headings = layout.columns.map((column) => foldHeading(column.heading));
  while (headings.length > 0 && headings[headings.length - 1] === '') headings.pop();
  return headings.length === 0 ? null : `${headings.length}-${hash(headings.join('\u001f'))}`;
}

/** What to keep of a layout the person has settled on; null when there is nothing to know it by. */
export function rememberMapping(layout: Layout): RememberedMapping | null {
  const key = mappingKey(layout);
  if (key === null) return null;
  return { key, meanings: layout.columns.map((column) => column.meaning), blankPosition: layout.blankPosition };
}

/** What a store kept, as a mapping; undefined for anything else. */
export function readRemembered(value: unknown): RememberedMapping | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const { key, meanings, blankPosition } = value as Partial<Record<keyof RememberedMapping, unknown>>;
  if (typeof key !== 'string' || !Array.isArray(meanings) || !meanings.every(isMeaning)) return undefined;
  if (blankPosition !== 'blank' && blankPosition !== 'as-above') return undefined;
  return { key, meanings, blankPosition };
}

const isMeaning = (value: unknown): value is Meaning => (MEANINGS as readonly unknown[]).includes(value);

/** Two FNV-1a hashes over the text, forwards and backwards: 64 bits in hexadecimal. */
function hash(text: string): string {
  let forwards = 0x811c9dc5;
  let backwards = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    forwards = Math.imul(forwards ^ text.charCodeAt(i), 0x01000193);
    backwards = Math.imul(backwards ^ text.charCodeAt(text.length - 1 - i), 0x01000193);
  }
  return [forwards, backwards].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}
