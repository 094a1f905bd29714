import type { Meaning } from '#engine/list/meaning.ts';
import { type Absolute, SLOTS } from '#engine/model/address.ts';
import type { LineCells } from './line-cells.ts';
import { type AddressStyle, type ListAddress, placeAddress, readListAddress } from './list-address.ts';
import type { ListStyle } from './list-style.ts';
import { isBlankMark, readWhole } from './read-number.ts';

/** An address of a line: where its first unit starts, or the text that could not be read. `slots` when a range says how many. */
export type DraftAddress = { readonly start: Absolute; readonly slots: number | null } | { readonly typed: string };

const PARTS: readonly { readonly address: Meaning; readonly universe: Meaning; readonly slot: Meaning }[] = [
  { address: 'address', universe: 'universe', slot: 'slot' },
  { address: 'address2', universe: 'universe2', slot: 'slot2' },
  { address: 'address3', universe: 'universe3', slot: 'slot3' },
  { address: 'address4', universe: 'universe4', slot: 'slot4' },
];

const PLAIN: AddressStyle = { padded: false, dashed: false };

/** The address of break `part` (0-based) of a line; undefined when the line has none. `above` is the universe named above it. */
export function draftAddress(
  line: LineCells,
  part: number,
  style: ListStyle,
  above: number | null,
): DraftAddress | undefined {
  const names = PARTS[part];
  if (names === undefined) throw new Error(`no break ${part}`);
  const meaning = (
    part === 0 ? ([names.slot, names.address, 'absolute'] as const) : ([names.slot, names.address] as const)
  ).find((each) => !isBlankMark(line.one(each)));
  const universeText = line.one(names.universe);
  if (meaning === undefined) {
    if (isBlankMark(universeText)) return undefined;
    // A universe alone patches nothing, but somebody meant something by it.
    line.keep(names.universe);
    return undefined;
  }
  const text = line.one(meaning);
  if (/^0+(?:\s*[:/.]\s*0+)?$/.test(text)) return undefined;
  const column = line.column(meaning);
  const read = readListAddress(text, style.addresses.get(column ?? -1) ?? PLAIN);
  const universe = readUniverse(universeText);
  if (read === undefined || universe === undefined) return typed(line, meaning, universeText, text);
  if (read.universe !== null && universe !== null && universe !== read.universe) {
    line.remark('universe-differs', names.universe, universeText);
  }
  return place(line, meaning, read, read.universe ?? (meaning === 'absolute' ? null : (universe ?? above)), text);
}

/** The number in a universe cell: null for an empty one, undefined when it says something else. */
function readUniverse(text: string): number | null | undefined {
  if (isBlankMark(text)) return null;
  return (
    readWhole(text) ??
    readWhole(/^(?:u|un|uni|univ|univers|universe|universum|universo|dmx)\s*\.?\s*(\d+)$/i.exec(text)?.[1] ?? '')
  );
}

function place(
  line: LineCells,
  meaning: Meaning,
  read: ListAddress,
  universe: number | null,
  text: string,
): DraftAddress {
  const hasUniverses = meaning === 'slot' || meaning === 'slot2' || meaning === 'slot3' || meaning === 'slot4';
  if (universe === null && hasUniverses && read.number <= SLOTS) {
    line.remark('no-universe', meaning, text);
    return { typed: text };
  }
  const start = placeAddress(universe, read.number);
  if (start === undefined) return typed(line, meaning, read.universe === null ? String(universe ?? '') : '', text);
  if (read.restored) line.remark('zero-restored', meaning, text);
  const slots = read.last === null ? null : read.last - read.number + 1;
  return { start, slots: slots !== null && slots >= 1 ? slots : null };
}

function typed(line: LineCells, meaning: Meaning, universeText: string, text: string): DraftAddress {
  line.remark('unreadable', meaning, text);
  return { typed: isBlankMark(universeText) ? text : `${universeText}:${text}` };
}
