import type { ChannelFunction, ChannelUse, NamedRange, Resolution, TypeChannel } from '../model/fixture-type.ts';
import { highest } from './dmx-value.ts';

/** A stretch of values, both ends counted in. */
export interface ValueSpan {
  readonly from: number;
  readonly to: number;
}

/**
 * The values of each function of a use, in the order of its functions: up to the next start among functions of the same
 * condition, or the highest value. Source: GDTF (DIN SPEC 15800), ChannelFunction.
 */
export function functionSpans(use: ChannelUse, resolution: Resolution): readonly ValueSpan[] {
  const groups = startsByCondition(use);
  const ends = new Map([...groups].map(([key, starts]) => [key, endsOf(starts, highest(resolution))]));
  return use.functions.map((each) => ({
    from: each.from,
    to: ends.get(conditionKey(each))?.get(each.from) ?? each.from,
  }));
}

/** The values of each range of a function, in the order of its ranges: up to the next start, or the function's end. */
export function rangeSpans(ranges: readonly NamedRange[], end: number): readonly ValueSpan[] {
  const starts = ranges.map((range) => range.from);
  const ends = endsOf(starts, end);
  return ranges.map(({ from }) => ({ from, to: ends.get(from) ?? from }));
}

/** The value a channel stands at first: that of the function named so, else of its first; 0 without any. */
export function defaultOf(channel: TypeChannel): number {
  const { initial } = channel;
  const named = channel.uses
    .filter((use) => use.attribute === initial?.attribute)
    .flatMap((use) => use.functions)
    .find((each) => each.name === initial?.name);
  return (named ?? channel.uses[0]?.functions[0])?.default ?? 0;
}

/** Where the functions of a use start, those that work under the same condition together. */
export function startsByCondition(use: ChannelUse): ReadonlyMap<string, readonly number[]> {
  const groups = new Map<string, number[]>();
  for (const each of use.functions) {
    const key = conditionKey(each);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [each.from]);
    else known.push(each.from);
  }
  return groups;
}

const conditionKey = ({ when }: ChannelFunction): string => (when === null ? '' : JSON.stringify(when));

function endsOf(starts: readonly number[], last: number): ReadonlyMap<number, number> {
  const sorted = [...new Set(starts)].sort((a, b) => a - b);
  return new Map(sorted.map((start, at) => [start, (sorted[at + 1] ?? Math.max(last, start) + 1) - 1]));
}
