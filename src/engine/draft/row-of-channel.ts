import type { ChannelFunction, ChannelUse, Resolution, TypeChannel } from '../model/fixture-type.ts';
import { atResolution } from '../type/dmx-value.ts';
import { defaultOf } from '../type/value-spans.ts';
import { cellText, oneLine, RANGES_LIMIT } from './cell-text.ts';
import type { DraftRow } from './draft.ts';

type RowText = Pick<DraftRow, 'name' | 'attribute' | 'default' | 'highlight' | 'ranges'>;

/** What a row has no place for; see `openChart`. */
export interface LostInRow {
  readonly conditions: number;
  readonly physical: number;
  readonly uses: number;
  readonly fine: number;
  readonly settings: number;
}

/** What a channel does, as the cells of a row say it, and what they have no place for. */
export function rowOfChannel(channel: TypeChannel): { readonly row: RowText; readonly lost: LostInRow } {
  const resolution = Math.max(1, Math.min(4, channel.offsets.length)) as Resolution;
  const value = (at: number) =>
    String(atResolution({ value: at, bytes: channel.resolution, fill: 'mirror' }, resolution));
  const [use] = channel.uses;
  const attribute = use?.attribute ?? '';
  const functions = functionsKept(use);
  const starts = startsOf(functions, attribute, channel.resolution);
  const { text, left } = rangesText(steppedOnce(starts));
  const standing = defaultOf(channel);
  const [first] = functions;
  const row: RowText = {
    name: first === undefined || first.name === `${attribute} 1` ? '' : cellText(oneLine(first.name)),
    attribute: cellText(attribute),
    default: standing === 0 ? '' : value(standing),
    highlight: channel.highlight === null ? '' : value(channel.highlight),
    ranges: isPlain(functions, attribute) ? '' : text,
  };
  const everything = channel.uses.flatMap((each) => each.functions);
  return {
    row,
    lost: {
      conditions: everything.filter((each) => each.when !== null).length,
      physical: everything.flatMap((each) => [each, ...each.ranges]).filter((each) => each.physical !== null).length,
      uses: Math.max(0, channel.uses.length - 1),
      fine: starts.filter((start) => start.isFine).length + left,
      settings: use === undefined || isUsual(use) ? 0 : 1,
    },
  };
}

const isUsual = ({ attribute, snap, master }: ChannelUse) =>
  snap === 'No' && master === (attribute === 'Dimmer' ? 'Grand' : 'None');

/** Those that work whatever other channels do; else those of one condition. Ascending. */
function functionsKept(use: ChannelUse | undefined): readonly ChannelFunction[] {
  const all = use?.functions ?? [];
  const free = all.filter((each) => each.when === null);
  const condition = JSON.stringify(all[0]?.when);
  const kept = free.length > 0 ? free : all.filter((each) => JSON.stringify(each.when) === condition);
  return [...kept].sort((a, b) => a.from - b.from);
}

const isPlain = (functions: readonly ChannelFunction[], attribute: string): boolean =>
  functions.length === 0 ||
  (functions.length === 1 &&
    functions.every((each) => each.from === 0 && each.ranges.length === 0 && each.attribute === attribute));

/** Something that starts at a value. */
interface Start {
  /** The 8 bit step it is in. */
  readonly step: number;
  /** Whether it starts elsewhere than at the beginning of its step. */
  readonly isFine: boolean;
  readonly name: string;
  /** The attribute that starts here; empty: what it does goes on. */
  readonly attribute: string;
}

function startsOf(functions: readonly ChannelFunction[], attribute: string, resolution: Resolution): readonly Start[] {
  const unit = 256 ** (resolution - 1);
  const start = (from: number, name: string, starting: string): Start => {
    return { step: Math.floor(from / unit), isFine: from % unit !== 0, name, attribute: starting };
  };
  return functions.flatMap((each, at) => {
    const starting = at === 0 && each.from === 0 && each.attribute === attribute ? '' : each.attribute;
    const ranges = [...each.ranges].sort((a, b) => a.from - b.from);
    const [first] = ranges;
    // A function that its ranges do not cover from its first value on has a line of its own.
    const own = first?.from === each.from ? [] : [start(each.from, first === undefined ? each.name : '', starting)];
    const lines = ranges.map((range, place) => {
      return start(range.from, range.name, own.length === 0 && place === 0 ? starting : '');
    });
    return [...own, ...lines];
  });
}

/** Of several that start in one step the last counts, and it starts what any of them did. */
function steppedOnce(starts: readonly Start[]): readonly Start[] {
  const bySteps = new Map<number, Start>();
  for (const start of starts) {
    const known = bySteps.get(start.step);
    bySteps.set(start.step, { ...start, attribute: start.attribute || (known?.attribute ?? '') });
  }
  return [...bySteps.values()].sort((a, b) => a.step - b.step);
}

function rangesText(starts: readonly Start[]): { readonly text: string; readonly left: number } {
  const lines = starts.map((start, at) => lineText(start, (starts[at + 1]?.step ?? 256) - 1));
  let text = '';
  for (const [at, line] of lines.entries()) {
    const longer = at === 0 ? line : `${text}\n${line}`;
    if (longer.length > RANGES_LIMIT) return { text, left: lines.length - at };
    text = longer;
  }
  return { text, left: 0 };
}

/** A line that `readRanges` reads as the same: a name that looks like something else is set off from it. */
function lineText({ step, name, attribute }: Start, last: number): string {
  const called = oneLine(name);
  const between = called === '' || /^[\p{L}\p{N}]/u.test(called) ? ' ' : ': ';
  const starting = oneLine(attribute.replace(/[[\]]/g, ' '));
  const bracket = starting === '' ? (called.endsWith(']') ? ' []' : '') : ` [${starting}]`;
  return `${step}-${last}${called === '' ? '' : between + called}${bracket}`;
}
