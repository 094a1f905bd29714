import { DELIMITERS, type Delimiter } from '#engine/list/grid.ts';
import { knownHeadings } from './heading-words.ts';
import { scanCells } from './scan-cells.ts';

const SAMPLE = 65_536;
const SAMPLE_ROWS = 300;

/**
 * The delimiter under which the list looks most like a table: most rows of one width, and a row of headings we know. A
 * colon is never one, since addresses are written with it.
 */
export function guessDelimiter(text: string): Delimiter {
  const sample = text.slice(0, SAMPLE);
  let best: Delimiter = ',';
  let most = 0;
  for (const delimiter of DELIMITERS) {
    const score = tableScore(sample, delimiter);
    if (score > most) {
      most = score;
      best = delimiter;
    }
  }
  return best;
}

function tableScore(sample: string, delimiter: Delimiter): number {
  const rows = scanCells(sample, delimiter, SAMPLE_ROWS).rows.filter((row) => row.cells.some((cell) => cell !== ''));
  const widths = new Map<number, number>();
  let headings = 0;
  for (const { cells } of rows) {
    if (cells.length > 1) widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1);
    if (cells.length > 1) headings = Math.max(headings, knownHeadings(cells));
  }
  let evenness = 0;
  for (const [width, count] of widths) evenness = Math.max(evenness, (count / rows.length) * (1 + Math.log2(width)));
  return evenness + headings;
}
