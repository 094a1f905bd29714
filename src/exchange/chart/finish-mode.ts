import type { ChartMode, ChartRemark, ChartRow } from '#engine/draft/chart-reading.ts';
import { slotsText } from '#engine/draft/slots-text.ts';
import type { Block, RawRow } from './blocks.ts';
import { type Channel, takeApart } from './channel.ts';
import { findRepeats } from './find-repeats.ts';
import { mergeBytes } from './merge-bytes.ts';
import { defaultText, rangesText } from './value-texts.ts';

/** One mode of a block, that of one column of slots, and the rows that each line's row became (by index). */
export interface FinishedMode {
  readonly mode: ChartMode;
  readonly rowsOf: ReadonlyMap<RawRow, readonly number[]>;
}

/** Makes rows of what was read: counts from 1, merges bytes, names attributes, writes values as a draft holds them. */
export function finishMode(block: Block, column: number): FinishedMode {
  const raws = block.rows.filter((raw) => (raw.slots[column] ?? []).length > 0);
  const fromZero = raws.some((raw) => raw.slots[column]?.includes(0) === true);
  const apart = raws.flatMap((raw) =>
    takeApart(
      raw,
      (raw.slots[column] ?? []).map((slot) => slot + (fromZero ? 1 : 0)),
    ),
  );
  const channels = cellStrobes(mixing(mergeBytes(apart)));
  const remarks: ChartRemark[] = channels.flatMap((channel, row) =>
    channel.remarks.map((remark) => ({ ...remark, row })),
  );
  const rows = channels.map((channel, row) => rowOf(channel, row, remarks));
  const name = [block.name, block.modes.length > 1 ? (block.modes[column] ?? '') : ''].filter((each) => each !== '');
  const mode: ChartMode = {
    name: name.join(', '),
    rows,
    repeats: findRepeats(channels),
    remarks: [
      ...modeRemarks(block, column, channels, fromZero ? 1 : 0),
      ...remarks.sort((a, b) => (a.row ?? 0) - (b.row ?? 0)),
    ],
  };
  return { mode, rowsOf: rowsOfRaw(channels) };
}

function rowOf(channel: Channel, row: number, remarks: ChartRemark[]): ChartRow {
  const { slots, name, attribute, guess, part, raws } = channel;
  const values = rangesText(channel);
  const states = defaultText(channel.default, slots.length);
  const lights = defaultText(channel.highlight, slots.length);
  remarks.push(...values.remarks.map((remark) => ({ ...remark, row })));
  for (const text of [states, lights].filter((each) => each.unread !== '')) {
    remarks.push({ code: 'default-unread', row, text: text.unread });
  }
  return {
    slots: slotsText(slots),
    break: channel.break,
    name,
    attribute,
    part,
    guess,
    default: states.text,
    highlight: lights.text,
    ranges: values.text,
    lines: [...new Set(raws.flatMap((raw) => raw.lines))].sort((a, b) => a - b),
  };
}

/** Cyan, magenta and yellow take colour away where there is no red, green or blue to add. Common practice. */
function mixing(channels: readonly Channel[]): readonly Channel[] {
  const names = new Set(channels.map((channel) => channel.attribute));
  const subtracts = ['C', 'M', 'Y'].every((colour) => names.has(`ColorAdd_${colour}`));
  if (!subtracts || ['R', 'G', 'B'].some((colour) => names.has(`ColorAdd_${colour}`))) return channels;
  return channels.map((channel) =>
    channel.guess !== 'stated' && /^ColorAdd_[CMY]$/.test(channel.attribute)
      ? { ...channel, attribute: channel.attribute.replace('Add', 'Sub') }
      : channel,
  );
}

/** `Strobe 1`, `Strobe 2` beside `Red 1`, `Red 2` are the strobes of cells, not several strobes of the unit. */
function cellStrobes(channels: readonly Channel[]): readonly Channel[] {
  const cells = new Set(channels.map((channel) => channel.part).filter((part) => /^\d+$/.test(part)));
  const counters = channels.map((channel) => /^Shutter(\d+)/.exec(channel.attribute)?.[1] ?? '');
  const strobes = new Set(counters.filter((counter) => counter !== ''));
  const same = strobes.size === cells.size && [...strobes].every((counter) => cells.has(counter));
  if (strobes.size < 2 || !same) return channels;
  return channels.map((channel, at) => {
    const counter = counters[at] ?? '';
    if (counter === '' || channel.part !== '' || channel.guess === 'stated') return channel;
    return { ...channel, attribute: channel.attribute.replace(/\d+/, '1'), part: counter };
  });
}

function modeRemarks(
  block: Block,
  column: number,
  channels: readonly Channel[],
  shift: number,
): readonly ChartRemark[] {
  const remarks: ChartRemark[] = [];
  const counts = new Map<string, number>();
  const placesOf = (channel: Channel) => channel.slots.map((slot) => `${channel.break}/${slot}`);
  for (const place of channels.flatMap(placesOf)) counts.set(place, (counts.get(place) ?? 0) + 1);
  const taken = new Set(channels.filter((channel) => channel.break === '').flatMap((channel) => channel.slots));
  const others = channels.some((channel) => channel.break !== '');
  const alone = block.modes.length === 1;
  const highest = [...taken].reduce((most, slot) => Math.max(most, slot), alone ? block.highest + shift : 0);
  const said = block.footprint ?? saidIn(block.modes[column] ?? '');
  if (said !== null && said !== highest && !others)
    remarks.push({ code: 'footprint-differs', row: null, text: `${said}, ${highest}` });
  if (shift > 0) remarks.push({ code: 'counted-from-0', row: null, text: '' });
  channels.forEach((channel, row) => {
    const twice = channel.slots.filter((slot) => (counts.get(`${channel.break}/${slot}`) ?? 0) > 1);
    if (twice.length > 0) remarks.push({ code: 'slot-twice', row, text: twice.join(', ') });
  });
  const missing = missingSlots(taken, highest);
  if (missing !== '') remarks.push({ code: 'slots-not-named', row: null, text: missing });
  return remarks;
}

/** `8 CH` over a column of slots. */
function saidIn(heading: string): number | null {
  const [, number] = /(?:^|\D)(\d{1,3})\s?-?\s?(?:ch|kanal|canaux|canales|canali|slots?)/i.exec(heading) ?? [];
  return number === undefined ? null : Number(number);
}

function missingSlots(taken: ReadonlySet<number>, highest: number): string {
  const runs: string[] = [];
  for (let slot = 1; slot <= highest; slot++) {
    const from = slot;
    while (slot <= highest && !taken.has(slot)) slot += 1;
    if (slot > from) runs.push(slot - 1 === from ? String(from) : `${from}-${slot - 1}`);
  }
  return runs.join(', ');
}

function rowsOfRaw(channels: readonly Channel[]): ReadonlyMap<RawRow, readonly number[]> {
  const rows = new Map<RawRow, number[]>();
  channels.forEach((channel, row) => {
    for (const raw of channel.raws) {
      const known = rows.get(raw);
      if (known === undefined) rows.set(raw, [row]);
      else known.push(row);
    }
  });
  return rows;
}
