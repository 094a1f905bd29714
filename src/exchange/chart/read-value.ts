import { trimEnd } from '#base/trim-end.ts';
import { readLead } from './read-lead.ts';

/** A stretch of values as the chart writes it, both ends counted in. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly percent: boolean;
}

/** The stretch of values a text begins with, and what stands behind it. */
export function readValue(text: string): { readonly stretch: Stretch; readonly rest: string } | undefined {
  const lead = readLead(text);
  if (lead === undefined || lead.worded || lead.kind === 'list') return undefined;
  const [from = 0, to = from] = lead.numbers;
  if (to > (lead.percent ? 100 : 65_535)) return undefined;
  return { stretch: { from, to, percent: lead.percent }, rest: lead.rest };
}

const INLINE = /(?<=\s)[([]?\d{1,5}\s?%?\s{0,2}(?:\.{2,3}|…|[-‐‑‒–—−~]|to |bis )\s{0,2}\d/gi;

/**
 * A name with its values in the same cell: `Dimmer 0-255 0…100 %`. Only values from 0 on, or those that end the cell, are
 * told from numbers of the name.
 */
export function splitName(text: string): {
  readonly name: string;
  readonly stretch: Stretch | null;
  readonly rest: string;
} {
  for (const match of text.matchAll(INLINE)) {
    const read = readValue(text.slice(match.index));
    if (read === undefined) continue;
    const { from, to } = read.stretch;
    const whole = from === 0 && to > 0;
    if (!whole && (read.rest !== '' || to < 20)) continue;
    const name = text.slice(0, match.index);
    return { name: trimEnd(name, ' :=(-'), stretch: read.stretch, rest: read.rest };
  }
  return { name: trimEnd(text, ' :'), stretch: null, rest: '' };
}
