import { type Absolute, absolute, isAbsolute, LAST_UNIVERSE, SLOTS, universeOf } from '#engine/model/address.ts';
import { readWhole } from './read-number.ts';

/**
 * How the addresses of one column are written, told from all its cells together.
 * - `padded`: slots have three digits (`3.001`), so that `3.12` has lost its last zero to a spreadsheet;
 * - `dashed`: `2-101` is universe and slot, since some cells cannot be a range of slots.
 */
export interface AddressStyle {
  readonly padded: boolean;
  readonly dashed: boolean;
}

/** An address as it was read. `last` is set when the cell names a range of slots, `restored` when a lost zero was put back. */
export interface ListAddress {
  readonly universe: number | null;
  /** A slot when there is a universe, else any number from 1: a slot or an absolute address. */
  readonly number: number;
  readonly last: number | null;
  readonly restored: boolean;
}

const PAIR =
  /^(?:(?:dmx|u|un|uni|univ|univers|universe|universum|universo)\s*\.?\s*)?(\d{1,5})\s*[:/.,\s]\s*(?:(?:addr|adr|address|ch|slot|#)\s*\.?\s*)?(\d{1,3})(?:\s*[-–]\s*(?:(\d{1,5})\s*[:/.,]\s*)?(\d{1,3}))?$/iu;
/** Where words say which number is which, anything may stand between them: `U3 A101`, `U3A101`, `U2-101`, `3 ch 101`. */
const WORDED =
  /^(?:(?:u|un|uni|univ|univers|universe|universum|universo)\s*\.?\s*(\d{1,5})(?:\s*[-–:/.,;]\s*|\s+|(?=[a-z@#]))(?:(?:a|add|addr|adr|address|adresse|ch|chan|slot|s|@|#)\s*\.?\s*)?|(\d{1,5})\s*[-–:/.,;]?\s*(?:a|add|addr|adr|address|adresse|ch|chan|slot|@)\s*\.?\s*)(\d{1,3})$/iu;
const NUMBER = /^(\d{1,8})(?:\s*[-–]\s*(\d{1,8}))?$/;

export function addressStyle(cells: readonly string[]): AddressStyle {
  let padded = false;
  let dotted = 0;
  let dashed = 0;
  let backward = false;
  let others = 0;
  for (const cell of cells) {
    const text = cell.trim();
    const dot = /^\d{1,5}[.,](\d{1,3})$/.exec(text);
    const dash = /^(\d{1,5})\s*[-–]\s*(\d{1,3})$/.exec(text);
    if (dot) {
      dotted += 1;
      if (/^0\d\d$/.test(dot[1] as string)) padded = true;
    }
    if (dash) {
      dashed += 1;
      if (Number(dash[2]) < Number(dash[1])) backward = true;
    } else if (text !== '') others += 1;
  }
  return { padded: padded && dotted > 0, dashed: backward && dashed > 0 && others === 0 };
}

/** Reads one cell of an address column; undefined when it is no address. Whether the numbers fit is `placeAddress`'s business. */
export function readListAddress(cell: string, style: AddressStyle): ListAddress | undefined {
  const text = cell.trim();
  if (style.dashed) {
    const dash = /^(\d{1,5})\s*[-–]\s*(\d{1,3})$/.exec(text);
    if (dash) return { universe: Number(dash[1]), number: Number(dash[2]), last: null, restored: false };
  }
  const whole = NUMBER.exec(text);
  if (whole) {
    const last = whole[2] === undefined ? null : Number(whole[2]);
    return { universe: null, number: Number(whole[1]), last, restored: false };
  }
  const pair = PAIR.exec(text);
  if (pair) return readPair(pair, text, style) ?? bareNumber(text);
  return readWorded(text);
}

function readWorded(text: string): ListAddress | undefined {
  const worded = WORDED.exec(text);
  const number = Number(worded?.[3]);
  if (!worded || number < 1 || number > SLOTS) return undefined;
  return { universe: Number(worded[1] ?? worded[2]), number, last: null, restored: false };
}

function readPair(pair: RegExpExecArray, text: string, style: AddressStyle): ListAddress | undefined {
  const slotText = pair[2] as string;
  const lost = style.padded && slotText.length < 3 && /^\d+[.,]\d+$/.test(text);
  const number = Number(lost ? slotText.padEnd(3, '0') : slotText);
  if (number < 1 || number > SLOTS) return undefined;
  const last = pair[4] === undefined ? null : Number(pair[4]);
  return { universe: Number(pair[1]), number, last, restored: lost };
}

/** `613.0`, as a spreadsheet writes the number 613. */
function bareNumber(text: string): ListAddress | undefined {
  const number = readWhole(text);
  return number === undefined ? undefined : { universe: null, number, last: null, restored: false };
}

/** The absolute address of a universe (null when the list says none) and a number; undefined when there is no such place. */
export function placeAddress(universe: number | null, number: number): Absolute | undefined {
  if (universe === null) return isAbsolute(number) ? number : undefined;
  if (universe < 1 || universe > LAST_UNIVERSE) return undefined;
  if (number >= 1 && number <= SLOTS) return absolute(universe, number);
  // An absolute number beside its own universe says the same thing twice.
  return isAbsolute(number) && universeOf(number) === universe ? number : undefined;
}
