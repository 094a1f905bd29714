import type { RawRow } from './blocks.ts';
import type { Lead } from './read-lead.ts';

interface Context {
  /** The row above. */
  readonly row: RawRow | null;
  /** A chart begins here. */
  readonly startsAnew: boolean;
  /** The highest slot so far. */
  readonly highest: number;
  /** All rows have a word before their slots. */
  readonly worded: boolean;
  /** The line stands further in than the rows. */
  readonly indented: boolean;
  /** What the next lines begin with. */
  readonly leadsBelow: () => Iterable<Lead | undefined>;
}

/** The most slots of one channel (GDTF: up to 32 bit). */
const MOST_BYTES = 4;

/**
 * Whether the numbers a line begins with are slots or values of the row above. Slots follow the highest so far; values
 * follow the last value of the row, which is complete at 255.
 */
export function tellsSlots(lead: Lead, context: Context): 'slots' | 'value' {
  const { row, startsAnew, worded, highest } = context;
  const [first = 0, last = first] = lead.numbers;
  if (lead.worded) return 'slots';
  if (row === null || lead.kind === 'list') return countsValues(lead) ? 'value' : 'slots';
  if (lead.percent || lead.mark === '=') return 'value';
  if (startsAnew && first <= 1 && !countsValues(lead)) return 'slots';
  if (worded || last > 512) return 'value';
  const end = row.values.at(-1)?.to;
  const goesOn = first === (end === undefined ? 0 : end + 1);
  const next = first === highest + 1;
  if (next) return goesOn && isValue(lead, context) ? 'value' : 'slots';
  return goesOn ? 'value' : neither(lead, context, end);
}

/** Nothing but values runs from 0 that far. */
const countsValues = ({ kind, numbers: [first = 0, last = first] }: Lead) =>
  kind === 'range' && first === 0 && last >= MOST_BYTES;

/** Numbers that could be the next slots and the next values. */
function isValue(lead: Lead, context: Context): boolean {
  const [first = 0, last = first] = lead.numbers;
  return context.indented || last - first >= MOST_BYTES || countsOn(last, context);
}

/** Single values counted up to a long stretch: `5 Red`, `6 Blue`, `7-255 Rainbow`. */
function countsOn(last: number, { leadsBelow }: Context): boolean {
  let end = last;
  for (const lead of leadsBelow()) {
    const [first = -1, to = first] = lead?.numbers ?? [];
    if (lead === undefined || lead.worded || lead.kind === 'list' || first !== end + 1) return false;
    if (to - first >= MOST_BYTES) return true;
    end = to;
  }
  return false;
}

/** Numbers that follow neither: a gap in the slots, a chart that starts again, or a gap in the values. */
function neither(lead: Lead, { row, indented, highest }: Context, end: number | undefined): 'slots' | 'value' {
  const [first = 0, last = first] = lead.numbers;
  const complete = end !== undefined && end >= 255;
  if (lead.kind === 'range') {
    if (complete && !indented && last - first < MOST_BYTES) return 'slots';
    return end === undefined && first > 0 && last - first < MOST_BYTES && !indented ? 'slots' : 'value';
  }
  if (indented || first === 0) return 'value';
  if (complete || end === undefined) return 'slots';
  return first === firstSlot(row) || first <= end || first < highest ? 'slots' : 'value';
}

const firstSlot = (row: RawRow | null) => row?.slots.flat()[0];
