import { SLOTS } from '../model/address.ts';
import { ADDRESS_FIELDS } from '../model/field.ts';
import type { ChannelFunction, FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import type { ModeSlots, TypeSlot } from './slots-of.ts';
import { slotsOf } from './slots-of.ts';
import { functionSpans, startsByCondition, type ValueSpan } from './value-spans.ts';

/** What is wrong with a type, as data; `words/` says it. `channel` is spelled as GDTF names it: part and first attribute. */
export type TypeTrouble = { readonly mode: string } & (
  | { readonly kind: 'mode-named-twice' }
  /** No channel takes a slot, nor is there a virtual one. */
  | { readonly kind: 'no-slots' }
  | { readonly kind: 'only-virtual'; readonly channels: number }
  /** A run of slots that the same two or more channels claim. */
  | {
      readonly kind: 'slot-taken-twice';
      readonly break: number;
      readonly first: number;
      readonly last: number;
      readonly channels: readonly string[];
    }
  | { readonly kind: 'past-512'; readonly break: number; readonly last: number }
  /** A break with a number that a fixture has no address for. */
  | { readonly kind: 'break-beyond'; readonly break: number }
  | { readonly kind: 'unreached'; readonly channel: string }
  /** One part does one thing on two channels: their names would be the same. */
  | { readonly kind: 'channel-named-twice'; readonly channel: string }
  /** Two functions, or two ranges of one function (`function` is not null), start at one value. */
  | { readonly kind: 'values-overlap'; readonly channel: string; readonly function: string | null; readonly at: number }
  /** Values before the first function, or before the first range of a function, that nothing names. */
  | ({ readonly kind: 'values-gap'; readonly channel: string; readonly function: string | null } & ValueSpan)
  /** A range starts at a value that is not its function's. */
  | { readonly kind: 'range-outside'; readonly channel: string; readonly function: string; readonly at: number }
);

/** Everything wrong with a type, mode by mode. Total: any type at all is legal, and what is wrong with it is said here. */
export function typeTroubles(type: FixtureType): readonly TypeTrouble[] {
  const names = new Set<string>();
  return type.modes.flatMap((mode) => {
    const twice: TypeTrouble[] = names.has(mode.name) ? [{ kind: 'mode-named-twice', mode: mode.name }] : [];
    names.add(mode.name);
    return [...twice, ...modeTroubles(type, mode)];
  });
}

/** GDTF's name of a channel: its part and its first attribute. */
export const channelName = (channel: TypeChannel): string => `${channel.part}_${channel.uses[0]?.attribute ?? ''}`;

function modeTroubles(type: FixtureType, mode: TypeMode): TypeTrouble[] {
  const slots = slotsOf(type, mode);
  return [
    ...emptiness(mode, slots),
    ...slots.breaks.flatMap((each) => takenTwice(mode.name, each.break, each.slots)),
    ...lastSlots(slots).flatMap(([number, last]) => breakTroubles(mode.name, number, last)),
    ...slots.unreached.map((channel) => ({
      kind: 'unreached' as const,
      mode: mode.name,
      channel: channelName(channel),
    })),
    ...namedTwice(mode),
    ...mode.channels.flatMap((channel) => valueTroubles(mode.name, channel)),
  ];
}

function emptiness(mode: TypeMode, { breaks, virtual }: ModeSlots): TypeTrouble[] {
  if (breaks.length > 0) return [];
  if (virtual === 0) return [{ kind: 'no-slots', mode: mode.name }];
  return [{ kind: 'only-virtual', mode: mode.name, channels: virtual }];
}

function takenTwice(mode: string, number: number, slots: readonly TypeSlot[]): TypeTrouble[] {
  const runs: (TypeTrouble & { kind: 'slot-taken-twice' })[] = [];
  for (const { slot, uses } of slots) {
    if (uses.length < 2) continue;
    const channels = [...new Set(uses.map((use) => channelName(use.channel)))];
    const run = runs.at(-1);
    if (run?.last === slot - 1 && run.channels.join('\n') === channels.join('\n')) {
      runs[runs.length - 1] = { ...run, last: slot };
    } else runs.push({ kind: 'slot-taken-twice', mode, break: number, first: slot, last: slot, channels });
  }
  return runs;
}

function namedTwice(mode: TypeMode): TypeTrouble[] {
  const names = mode.channels.map(channelName);
  const twice = new Set<string>();
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name)) twice.add(name);
    seen.add(name);
  }
  return [...twice].map((channel) => ({ kind: 'channel-named-twice', mode: mode.name, channel }));
}

const lastSlots = ({ breaks }: ModeSlots) => breaks.map((each) => [each.break, each.slots.length] as const);

function breakTroubles(mode: string, number: number, last: number): TypeTrouble[] {
  const troubles: TypeTrouble[] = [];
  if (last > SLOTS) troubles.push({ kind: 'past-512', mode, break: number, last });
  if (number > ADDRESS_FIELDS.length) troubles.push({ kind: 'break-beyond', mode, break: number });
  return troubles;
}

function valueTroubles(mode: string, channel: TypeChannel): TypeTrouble[] {
  const name = channelName(channel);
  return channel.uses.flatMap((use) => {
    const groups = startsByCondition(use);
    const spans = functionSpans(use, channel.resolution);
    return [
      ...[...groups.values()].flatMap((starts) => startTroubles({ mode, channel: name, function: null }, starts, 0)),
      ...use.functions.flatMap((each, at) =>
        rangeTroubles({ mode, channel: name, function: each.name }, each, spans[at]),
      ),
    ];
  });
}

function rangeTroubles(
  where: Where & { readonly function: string },
  { from, ranges }: ChannelFunction,
  span: ValueSpan = { from, to: from },
) {
  const starts = ranges.map((range) => range.from);
  const outside = starts.filter((start) => start < span.from || start > span.to);
  const troubles = startTroubles(where, starts, from);
  if (outside.length === 0) return troubles;
  return [...troubles, ...outside.map((start): TypeTrouble => ({ kind: 'range-outside', ...where, at: start }))];
}

type Where = { readonly mode: string; readonly channel: string; readonly function: string | null };

/** What is wrong with where things start that should cover everything from `first` on. */
function startTroubles(where: Where, starts: readonly number[], first: number): readonly TypeTrouble[] {
  if (starts[0] === undefined || (starts[0] <= first && isAscending(starts))) return SOUND;
  const sorted = [...starts].sort((a, b) => a - b);
  const twice = new Set(sorted.filter((start, at) => start === sorted[at - 1]));
  const troubles: TypeTrouble[] = [...twice].map((at) => ({ kind: 'values-overlap', ...where, at }));
  const [lowest] = sorted;
  if (lowest !== undefined && lowest > first) {
    troubles.push({ kind: 'values-gap', ...where, from: first, to: lowest - 1 });
  }
  return troubles;
}

const SOUND: readonly TypeTrouble[] = Object.freeze([]);

const isAscending = (starts: readonly number[]) =>
  starts.every((start, at) => at === 0 || start > (starts[at - 1] ?? 0));
