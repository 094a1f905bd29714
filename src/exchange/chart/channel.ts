import type { AttributeGuess, RemarkCode } from '#engine/draft/chart-reading.ts';
import { COLOUR_LETTERS } from '#engine/type/attribute-words.ts';
import { type ReadAttribute, readAttribute } from '#engine/type/read-attribute.ts';
import type { RawRow, RawValue } from './blocks.ts';
import { CHART_LIMITS } from './limits.ts';

/** A channel on its way to a row. */
export interface Channel {
  /** Coarse first. */
  readonly slots: readonly number[];
  readonly name: string;
  readonly attribute: string;
  readonly guess: AttributeGuess;
  readonly part: string;
  readonly bytes: ReadAttribute['bytes'];
  /** Channels with the same differ only in what they say of bytes. */
  readonly key: string;
  readonly break: string;
  readonly default: string;
  readonly highlight: string;
  readonly values: readonly RawValue[];
  readonly notes: readonly string[];
  readonly raws: readonly RawRow[];
  readonly remarks: readonly { readonly code: RemarkCode; readonly text: string }[];
}

const MOST_BYTES = 4;

/**
 * The channels of a row: one, or one for each slot where the row says so (`5-7 RGB`, `3-4 Pan/Tilt`, `13-16 Reserved`).
 * None when it has more slots than a channel can and nothing tells what they are.
 */
export function takeApart(raw: RawRow, slots: readonly number[]): readonly Channel[] {
  if (slots.length === 1) return [channelOf(raw, slots, raw.name)];
  const names = namesOfSlots(raw.name, slots.length);
  if (names !== undefined) {
    return names.map(({ name, part }, at) => {
      const channel = channelOf(raw, slots.slice(at, at + 1), name);
      const guess = channel.guess === 'sure' ? 'likely' : channel.guess;
      const remarks = at === 0 ? [...channel.remarks, ...apartRemarks(raw, slots.length)] : [];
      const values = slots.length > CHART_LIMITS.shared ? [] : channel.values;
      return { ...channel, guess, part: part === '' ? channel.part : part, values, remarks };
    });
  }
  if (slots.length > MOST_BYTES) return [];
  const channel = channelOf(raw, slots, raw.name);
  const clear = slots.length === 2 || channel.bytes === 'all' || channel.bytes === 'wider';
  if (clear) return [channel];
  return [{ ...channel, remarks: [...channel.remarks, { code: 'many-bytes', text: String(slots.length) }] }];
}

function apartRemarks(raw: RawRow, count: number): Channel['remarks'] {
  const values = count > CHART_LIMITS.shared ? raw.values.filter((value) => value.text !== '') : [];
  const text = values.map((value) => `${value.from}-${value.to} ${value.text}`).join('; ');
  const apart = { code: 'taken-apart', text: raw.name } as const;
  return text === '' ? [apart] : [apart, { code: 'value-unread', text }];
}

function channelOf(raw: RawRow, slots: readonly number[], text: string): Channel {
  const read = readAttribute(text);
  const stated = raw.attribute !== '';
  const name = slots.length > 1 ? read.name : text;
  return {
    slots,
    name: name === '' ? text : name,
    attribute: stated ? raw.attribute : read.attribute,
    guess: stated ? 'stated' : read.guess,
    part: read.part,
    bytes: read.bytes,
    key: raw.break === '' || read.key === '' ? read.key : `${read.key}/${raw.break}`,
    break: raw.break,
    default: raw.default,
    highlight: raw.highlight,
    values: raw.values,
    notes: raw.notes,
    raws: [raw],
    remarks: raw.unread.map((unread) => ({ code: 'value-unread', text: unread })),
  };
}

type SlotName = { readonly name: string; readonly part: string };

function namesOfSlots(text: string, count: number): readonly SlotName[] | undefined {
  return coloursOf(text, count) ?? listed(text, count) ?? reserved(text, count);
}

/** `RGBW`, also of several cells: `RGB pixel 1-8`. */
function coloursOf(text: string, count: number): readonly SlotName[] | undefined {
  const [, letters = '', others = ''] = /^(?:.{0,20}\s)?(RGB[WALCMY]{0,4}|CMY)\b(.{0,40})$/s.exec(text) ?? [];
  if (letters === '' || count % letters.length !== 0) return undefined;
  const cells = count / letters.length;
  const [, word = '', first = '1', last] =
    /(\p{L}{3,12})\s{0,2}#?(\d{1,3})\s{0,3}(?:-|–|—|\.{2,3}|…|to|bis)\s{0,3}(\d{1,3})/u.exec(text) ?? [];
  if (cells > 1 && (last === undefined || Number(last) - Number(first) + 1 !== cells)) return undefined;
  const single = /(\p{L}{3,12})\s{0,2}(\d{1,3})\s*$/u.exec(others);
  return Array.from({ length: count }, (_, at) => {
    const cell = Math.floor(at / letters.length);
    const part =
      cells > 1
        ? `${capital(word)} ${Number(first) + cell}`
        : single === null
          ? ''
          : `${capital(single[1] ?? '')} ${single[2]}`;
    return { name: COLOUR_LETTERS[letters[at % letters.length] ?? ''] ?? '', part };
  });
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);

/** As many names as slots, each of which says what it is: `Pan/Tilt`, `Pan, Pan fine`. */
function listed(text: string, count: number): readonly SlotName[] | undefined {
  const names = text.split(/\s{0,3}[/,+&]\s{0,3}/);
  if (names.length !== count || names.some((name) => name.trim() === '')) return undefined;
  const reads = names.map(readAttribute);
  if (reads.some((read) => read.guess === 'unknown' || read.key === '')) return undefined;
  return names.map((name) => ({ name, part: '' }));
}

function reserved(text: string, count: number): readonly SlotName[] | undefined {
  const read = readAttribute(text);
  if (read.attribute !== 'NoFeature') return undefined;
  return Array.from({ length: count }, () => ({ name: text, part: '' }));
}
