import type { GridRow } from '#engine/list/grid.ts';
import type { LayoutColumn } from '#engine/list/layout.ts';
import type { ListRemark } from '#engine/list/read-list.ts';
import { ADDRESS_FIELDS, type AddressField } from '#engine/model/field.ts';
import { LAST_CHANNEL } from '#engine/model/read-fixture.ts';
import { countNames } from './counting.ts';
import { type DraftAddress, draftAddress } from './draft-address.ts';
import { LIST_LIMITS } from './limits.ts';
import { type LineCells, lineCells } from './line-cells.ts';
import type { ListStyle } from './list-style.ts';
import { footprintInWords, isBlankMark, readFootprint, readQuantity, readWhole } from './read-number.ts';

type TextField = 'position' | 'type' | 'mode' | 'purpose' | 'colour' | 'circuit';

/** One line that makes fixtures, its cells read but not yet counted out. */
export interface Draft {
  readonly texts: Readonly<Record<TextField, string>>;
  readonly notes: readonly string[];
  /** Names of the units, one for each; a single one when the line does not count them. Empty text for none. */
  readonly units: readonly string[];
  /** As read: numbers, or one text that could not be read. */
  readonly channels: readonly number[] | { readonly typed: string };
  readonly quantity: number | undefined;
  readonly footprints: readonly number[] | undefined;
  readonly addresses: Readonly<Partial<Record<AddressField, DraftAddress>>>;
  /** Whether the line counts up more units than a line may. */
  readonly tooMany: boolean;
  readonly remarks: readonly ListRemark[];
  /** Columns whose cell is in the fixture. */
  readonly taken: ReadonlySet<number>;
}

/** Reads one fixture line. `above` is what lines above it name for it. */
export function draftLine(
  row: GridRow,
  columns: readonly LayoutColumn[],
  style: ListStyle,
  above: { readonly heading: string; readonly universe: number | null },
): Draft {
  const line = lineCells(row, columns);
  const sized = takeQuantity(line.joined('type', ' '), line, style);
  const texts = {
    position: line.joined('position', ' ') || above.heading,
    type: sized.type,
    mode: line.joined('mode', ' '),
    purpose: line.joined('purpose', ' '),
    colour: line.joined('colour', ' '),
    circuit: line.joined('circuit', ' '),
  };
  const footprints = takeFootprints(line, texts);
  const channels = takeChannels(line, style);
  const unit = sized.unitIsQuantity ? '' : line.one('unit');
  const counted = style.unitRanges ? countNames(unit) : [unit];
  const addresses: Partial<Record<AddressField, DraftAddress>> = {};
  for (const [part, field] of ADDRESS_FIELDS.entries()) {
    const address = draftAddress(line, part, style, above.universe);
    if (address !== undefined) addresses[field] = address;
  }
  const tooMany = counted === undefined || (sized.quantity ?? 0) > LIST_LIMITS.perLine || channels === 'too-many';
  return {
    texts,
    notes: line.notes(),
    units: counted ?? [unit],
    channels: channels === 'too-many' ? [] : channels,
    quantity: sized.quantity,
    footprints,
    addresses,
    tooMany,
    remarks: line.remarks,
    taken: line.taken,
  };
}

interface Sized {
  readonly type: string;
  readonly quantity: number | undefined;
  readonly unitIsQuantity: boolean;
}

const BEFORE = /^(\d{1,3})\s*[x×]\s+(\S.*)$/su;
const BEHIND = /^(.*\S)\s+\(?(?:[x×]\s?(\d{1,3})|(\d{1,3})\s?[x×])\)?$/su;

/** How many units the line says it stands for: in a column of its own, as `x6` for a unit, or with the type (`6x Spot`). */
function takeQuantity(type: string, line: LineCells, style: ListStyle): Sized {
  const own = line.one('quantity');
  const unit = line.one('unit');
  if (own !== '' && !isBlankMark(own)) {
    const quantity = readQuantity(own);
    if (quantity === undefined) line.keep('quantity');
    return { type, quantity, unitIsQuantity: false };
  }
  if (/[x×]/iu.test(unit) && readQuantity(unit) !== undefined) {
    return { type, quantity: readQuantity(unit), unitIsQuantity: true };
  }
  const before = BEFORE.exec(type);
  if (before) return { type: before[2] as string, quantity: Number(before[1]), unitIsQuantity: false };
  const behind = style.quantityBehindType ? BEHIND.exec(type) : null;
  if (!behind) return { type, quantity: undefined, unitIsQuantity: false };
  return { type: behind[1] as string, quantity: Number(behind[2] ?? behind[3]), unitIsQuantity: false };
}

function takeFootprints(line: LineCells, texts: { readonly type: string; readonly mode: string }) {
  const own = line.one('footprint');
  if (own !== '' && !isBlankMark(own)) {
    const footprints = readFootprint(own);
    if (footprints !== undefined && texts.type !== '') return footprints;
    line.keep('footprint');
    return undefined;
  }
  const worded = texts.type === '' ? undefined : (footprintInWords(texts.mode) ?? footprintInWords(texts.type));
  if (worded === undefined) return undefined;
  line.remark('footprint-from-words', 'mode', String(worded));
  return [worded];
}

function takeChannels(line: LineCells, style: ListStyle): readonly number[] | { readonly typed: string } | 'too-many' {
  const text = line.one('channel');
  if (isBlankMark(text)) return [];
  const single = readWhole(text);
  const names = single === undefined && style.channelRanges ? countNames(text) : [text];
  if (names === undefined) return 'too-many';
  const numbers = names.map(readWhole);
  const read = numbers.filter(
    (number): number is number => number !== undefined && number >= 1 && number <= LAST_CHANNEL,
  );
  if (read.length === numbers.length) return read;
  line.remark('unreadable', 'channel', text);
  return { typed: text };
}
