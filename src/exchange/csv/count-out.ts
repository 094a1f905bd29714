import { formatAddress } from '#engine/address/notation.ts';
import type { ListRemark, RemarkCode } from '#engine/list/read-list.ts';
import { type Absolute, absolute, isAbsolute, SLOTS, slotOf, universeOf } from '#engine/model/address.ts';
import { ADDRESS_FIELDS, CELL_LIMIT, type CellValue, type Field } from '#engine/model/field.ts';
import type { Cells } from '#engine/model/fixture.ts';
import { countOn } from './counting.ts';
import type { DraftAddress } from './draft-address.ts';
import type { Draft } from './draft-line.ts';

/** What the other lines of the list take: it tells whether a line that stands for several units counts on or shares. */
export interface Neighbours {
  readonly channels: ReadonlyMap<number, number>;
  readonly starts: ReadonlySet<Absolute>;
  /** Whether lines of this list mostly share their one channel, and their one address. */
  readonly shareChannels: boolean;
  readonly shareAddresses: boolean;
}

interface Counted {
  readonly fixtures: readonly Cells[];
  readonly remarks: readonly ListRemark[];
}

/** How many units a line stands for. */
export function unitsOf(draft: Draft): number {
  if (draft.units.length > 1) return draft.units.length;
  if (listed(draft).length > 1) return listed(draft).length;
  return draft.quantity ?? 1;
}

export function neighboursOf(drafts: readonly Draft[]): Neighbours {
  const channels = new Map<number, number>();
  const starts = new Set<Absolute>();
  for (const draft of drafts) {
    for (const channel of listed(draft)) channels.set(channel, (channels.get(channel) ?? 0) + 1);
    for (const address of Object.values(draft.addresses)) if ('start' in address) starts.add(address.start);
  }
  const several = drafts.filter((draft) => unitsOf(draft) > 1);
  const crowdsChannel = (draft: Draft) => runsInto(listed(draft)[0] ?? 0, unitsOf(draft), channels);
  const crowdsAddress = (draft: Draft) => starts.has((startOf(draft) + (draft.footprints?.[0] ?? 1)) as Absolute);
  return {
    channels,
    starts,
    shareChannels: mostly(
      several.filter((draft) => listed(draft).length === 1),
      crowdsChannel,
    ),
    shareAddresses: mostly(
      several.filter((draft) => startOf(draft) > 0),
      crowdsAddress,
    ),
  };
}

const mostly = (drafts: readonly Draft[], holds: (draft: Draft) => boolean) =>
  drafts.length > 0 && drafts.filter(holds).length * 2 >= drafts.length;

/** Where the first break of a line starts, 0 when that is not known. */
function startOf({ addresses }: Draft): number {
  return addresses.address !== undefined && 'start' in addresses.address ? addresses.address.start : 0;
}

const listed = (draft: Draft): readonly number[] => ('typed' in draft.channels ? [] : draft.channels);

function runsInto(channel: number, count: number, channels: ReadonlyMap<number, number>): boolean {
  for (let i = 1; i < count; i++) if (channels.has(channel + i)) return true;
  return false;
}

/** The fixtures that a line stands for, each with its cells; `footprints` and `mode` are what its mode was settled to. */
export function countOut(
  draft: Draft,
  mode: string,
  footprints: readonly number[] | undefined,
  neighbours: Neighbours,
): Counted {
  const count = unitsOf(draft);
  const remarks: ListRemark[] = [];
  const remark = (code: RemarkCode, text: string) => remarks.push({ code, column: null, text });
  if (count > 1) remark('expanded', String(count));
  const counts = [draft.units.length, listed(draft).length, draft.quantity ?? 1].filter((each) => each > 1);
  if (counts.some((each) => each !== count)) remark('quantity-differs', counts.join(', '));
  const units = countUnits(draft, count, remark);
  const channels = countChannels(draft, count, neighbours, remark);
  const addresses = ADDRESS_FIELDS.map((field, part) =>
    countAddresses(draft.addresses[field], count, footprints?.[part], neighbours, remark),
  );
  const { position, type, purpose, colour, circuit } = draft.texts;
  const notes = fittingNotes(draft.notes, remark);
  const fixtures = Array.from({ length: count }, (_, i) => {
    const cells: [Field, CellValue | undefined][] = [
      ['channel', channels[i]],
      ['position', position],
      ['unit', units[i]],
      ['type', type],
      ['mode', mode],
      ...ADDRESS_FIELDS.map((field, part): [Field, CellValue | undefined] => [field, addresses[part]?.[i]]),
      ['purpose', purpose],
      ['colour', colour],
      ['circuit', circuit],
      ['notes', notes],
    ];
    return Object.fromEntries(
      cells.filter(([, value]) => value !== undefined && value !== null && value !== ''),
    ) as Cells;
  });
  return { fixtures, remarks };
}

type Remark = (code: RemarkCode, text: string) => void;

function fittingNotes(notes: readonly string[], remark: Remark): string {
  const all = notes.join('; ');
  if (all.length <= CELL_LIMIT) return all;
  remark('too-long', all.slice(0, 80));
  return '';
}

function countUnits(draft: Draft, count: number, remark: Remark): readonly string[] {
  if (draft.units.length > 1) return draft.units;
  const [first = ''] = draft.units;
  const units = Array.from({ length: count }, (_, i) => (i === 0 ? first : (countOn(first, i) ?? '')));
  if (count > 1 && first !== '' && units[1] === '') remark('unit-not-counted', first);
  return units;
}

function countChannels(
  draft: Draft,
  count: number,
  neighbours: Neighbours,
  remark: Remark,
): readonly (number | string | undefined)[] {
  if ('typed' in draft.channels) return new Array(count).fill(draft.channels.typed);
  const [first] = draft.channels;
  if (draft.channels.length !== 1 || first === undefined) return draft.channels;
  if (count === 1) return [first];
  if (!neighbours.shareChannels && !runsInto(first, count, neighbours.channels)) {
    return Array.from({ length: count }, (_, i) => first + i);
  }
  remark('channel-shared', String(first));
  return new Array(count).fill(first);
}

/** Start addresses of a line's units: one behind the other, a unit that does not fit in its universe first in the next. */
function countAddresses(
  address: DraftAddress | undefined,
  count: number,
  footprint: number | undefined,
  neighbours: Neighbours,
  remark: Remark,
): readonly CellValue[] {
  if (address === undefined) return [];
  if ('typed' in address) return [address.typed];
  const { start, slots } = address;
  if (slots !== null && footprint !== undefined && slots !== footprint * count) remark('range-differs', String(slots));
  if (count === 1) return [start];
  const step = footprint ?? 0;
  const behind = start + Math.max(1, step);
  const crowded = isAbsolute(behind) && neighbours.starts.has(behind);
  if (crowded || (step === 0 && neighbours.shareAddresses)) {
    remark('address-shared', formatAddress(start));
    return new Array(count).fill(start);
  }
  if (step === 0) {
    remark('address-not-counted', formatAddress(start));
    return [start];
  }
  const starts: Absolute[] = [start];
  for (let i = 1; i < count; i++) {
    const next = nextStart(starts[i - 1] as Absolute, step);
    if (next === undefined) break;
    if (universeOf(next) !== universeOf(starts[i - 1] as Absolute) && slotOf(next) === 1) {
      if (slotOf(starts[i - 1] as Absolute) + 2 * step - 1 > SLOTS) remark('next-universe', formatAddress(next));
    }
    starts.push(next);
  }
  return starts;
}

function nextStart(before: Absolute, step: number): Absolute | undefined {
  const next = before + step;
  if (!isAbsolute(next)) return undefined;
  const fits = slotOf(next) + step - 1 <= SLOTS && universeOf(next) === universeOf(before);
  if (fits) return next;
  const first = universeOf(next) === universeOf(before) ? universeOf(before) + 1 : universeOf(next);
  const start = (first - 1) * SLOTS + 1;
  return isAbsolute(start) ? absolute(first, 1) : undefined;
}
