import type { ChartRepeat } from '#engine/draft/chart-reading.ts';
import { foldWord } from '#engine/type/fold-words.ts';
import type { Channel } from './channel.ts';

/** Rows of the longest cell that is looked for. */
const LONGEST = 64;

/**
 * Rows whose attributes come again, twice or more, always the same number of slots further: cells of a bar, pixels. The
 * stretches that cover most come first, and none shares a row with another. Work: 64 looks at each row.
 */
export function findRepeats(channels: readonly Channel[]): readonly ChartRepeat[] {
  const signs = channels.map(signOf);
  const found: ChartRepeat[] = [];
  for (let rows = 1; rows <= Math.min(LONGEST, channels.length / 2); rows++)
    found.push(...runsOf(channels, signs, rows));
  found.sort((a, b) => b.rows * b.count - a.rows * a.count || a.rows - b.rows || a.firstRow - b.firstRow);
  const taken = new Uint8Array(channels.length);
  const kept = found.filter(({ firstRow, rows, count }) => {
    const end = firstRow + rows * count;
    if (taken.subarray(firstRow, end).includes(1)) return false;
    taken.fill(1, firstRow, end);
    return true;
  });
  return kept.sort((a, b) => a.firstRow - b.firstRow);
}

/** What makes two rows alike: the same attribute and as many bytes in the same order. Nothing is like a slot without use. */
function signOf(channel: Channel): string {
  if (channel.attribute === 'NoFeature' || channel.attribute === '') return '';
  const [first = 0] = channel.slots;
  const attribute = channel.guess === 'unknown' ? foldWord(channel.attribute).replace(/\d+/g, '0') : channel.attribute;
  return `${attribute} ${channel.slots.map((slot) => slot - first).join()}`;
}

function runsOf(channels: readonly Channel[], signs: readonly string[], rows: number): ChartRepeat[] {
  const found: ChartRepeat[] = [];
  let start = 0;
  let step = 0;
  const close = (end: number) => {
    const count = Math.floor((end - start) / rows);
    if (count >= 2) found.push({ firstRow: start, rows, count, step });
  };
  for (let at = rows; at <= channels.length; at++) {
    const apart = distance(channels, signs, at, rows);
    if (apart !== undefined && (step === 0 || apart === step)) {
      if (step === 0) start = at - rows;
      step = apart;
      continue;
    }
    if (step !== 0) close(at);
    step = apart ?? 0;
    start = at - rows;
  }
  return found;
}

/** How many slots the row at `at` stands behind its like, `rows` before; undefined when they are not alike. */
function distance(
  channels: readonly Channel[],
  signs: readonly string[],
  at: number,
  rows: number,
): number | undefined {
  const sign = signs[at];
  if (sign === undefined || sign === '' || sign !== signs[at - rows]) return undefined;
  const apart = (channels[at]?.slots[0] ?? 0) - (channels[at - rows]?.slots[0] ?? 0);
  return apart > 0 ? apart : undefined;
}
