import type { RemarkCode } from '#engine/draft/chart-reading.ts';
import { flashesIn } from '#engine/type/read-attribute.ts';
import type { RawValue } from './blocks.ts';
import type { Channel } from './channel.ts';

interface Texts {
  readonly text: string;
  readonly remarks: readonly { readonly code: RemarkCode; readonly text: string }[];
}

const LAST = 255;

/**
 * The values of a channel as a draft holds them: one line each, in 8 bit steps. A single stretch over all values without
 * words says nothing. Words without values hold for all of them, when there are no values.
 */
export function rangesText(channel: Channel): Texts {
  const { values, notes, slots } = channel;
  if (values.length === 0) return { text: notes.length === 0 ? '' : line(0, LAST, notes.join(' '), ''), remarks: [] };
  const wide = values.some((value) => !value.percent && value.to > LAST);
  const remarks: Texts['remarks'][number][] = [];
  if (wide && slots.length < 2) {
    const text = values.map((value) => `${value.from}-${value.to} ${value.text}`.trim()).join('; ');
    return { text: '', remarks: [{ code: 'value-unread', text }] };
  }
  const partial = values.filter((value) => value.percent && !(value.from === 0 && value.to === 100));
  if (partial.length > 0)
    remarks.push({ code: 'from-percent', text: partial.map((value) => `${value.from}-${value.to} %`).join(', ') });
  if (notes.length > 0) remarks.push({ code: 'note-not-taken', text: notes.join(' ') });
  const steps = values.map((value) => inSteps(value, wide ? 256 : 1));
  const [only] = steps;
  const nothing = steps.length === 1 && only !== undefined && only.from === 0 && only.to === LAST && only.text === '';
  if (wide && !nothing) remarks.push({ code: 'from-16-bit', text: '' });
  const tags = tagsOf(channel, steps);
  return {
    text: nothing ? '' : steps.map(({ from, to, text }, at) => line(from, to, text, tags[at] ?? '')).join('\n'),
    remarks,
  };
}

// A line's last brackets name an attribute, so that those of the manual become round.
const line = (from: number, to: number, text: string, tag: string) =>
  [`${from === to ? from : `${from}-${to}`}${colon(plain(text))}`, plain(text), tag === '' ? '' : `[${tag}]`]
    .filter((each) => each !== '')
    .join(' ');

const plain = (text: string) =>
  text
    .replaceAll('[', '(')
    .replaceAll(']', ')')
    .replace(/^[%:=\s]+/, '');

// `5 to 10 Hz` would be the values 5 to 10.
const colon = (text: string) => (/^(?:[-–—~…]|\.\.|to\b)/i.test(text) ? ':' : '');

function inSteps(
  value: RawValue,
  unit: 1 | 256,
): { readonly from: number; readonly to: number; readonly text: string } {
  const { from, to, text } = value;
  if (value.percent) {
    const words = from === 0 && to === 100 && text === '' ? '0-100 %' : text;
    return { from: firstOfPercent(from), to: lastOfPercent(to), text: words };
  }
  return { from: Math.floor(from / unit), to: Math.min(LAST, Math.floor(to / unit)), text };
}

// 0-49 % and 50-100 % meet at 127 and 128: a whole percent lasts until the next one begins.
const firstOfPercent = (percent: number) => Math.ceil((percent * LAST) / 100);
const lastOfPercent = (percent: number) => (percent >= 100 ? LAST : firstOfPercent(percent + 1) - 1);

/** Where a shutter or dimmer flashes, its values say so; what stands behind is the channel's own again. */
function tagsOf(channel: Channel, steps: readonly { readonly text: string }[]): readonly string[] {
  const [, counter] = /^(?:Shutter(\d+)|Dimmer)$/.exec(channel.attribute) ?? [];
  const flashing = channel.guess === 'sure' && /^(?:Shutter\d+|Dimmer)$/.test(channel.attribute);
  let current = channel.attribute;
  return steps.map(({ text }) => {
    const flash = flashing ? flashesIn(text) : null;
    const now = flash === null ? channel.attribute : `Shutter${counter ?? '1'}${flash}`;
    const tag = now === current ? '' : now;
    current = now;
    return tag;
  });
}

/** A value of the whole channel: numbers that fit 8 bit count in 8 bit steps, as manuals write them. */
export function defaultText(text: string, bytes: number): { readonly text: string; readonly unread: string } {
  const [, digits, percent] = /^(\d{1,5})\s*(%)?$/.exec(text.trim()) ?? [];
  if (digits === undefined) return { text: '', unread: /\p{L}|\d/u.test(text) ? text : '' };
  const number = percent === undefined ? Number(digits) : Math.round((Number(digits) * LAST) / 100);
  if (percent !== undefined && Number(digits) > 100) return { text: '', unread: text };
  if (number <= LAST) return { text: bytes > 1 ? `${number}/1` : String(number), unread: '' };
  return number < 256 ** bytes ? { text: String(number), unread: '' } : { text: '', unread: text };
}
