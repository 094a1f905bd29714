import type {
  ChannelFunction,
  ChannelUse,
  Condition,
  FixtureType,
  PhysicalRange,
  Resolution,
  TypeChannel,
  TypeMode,
} from '../model/fixture-type.ts';
import { slotsOf } from './slots-of.ts';
import { defaultOf, functionSpans, rangeSpans, type ValueSpan } from './value-spans.ts';

/** A mode as its manual charts it: every slot of every break. */
export interface ModeChart {
  /** Breaks that have slots, ascending. */
  readonly breaks: readonly ChartBreak[];
  /** Channels without slots, once for each place their part stands in. */
  readonly virtual: number;
}

interface ChartBreak {
  readonly break: number;
  /** Every slot from 1 to the footprint. */
  readonly slots: readonly ChartSlot[];
}

/** A slot of a break, 1-based. Without a use it is a hole; with two it is a fault of the type. */
export interface ChartSlot {
  readonly slot: number;
  readonly uses: readonly ChartUse[];
}

/** What a slot does. */
export interface ChartUse {
  /** What its channel does first: a GDTF attribute name, or any text; empty when nobody said. */
  readonly attribute: string;
  /** The cell it belongs to; empty in the body. */
  readonly cell: string;
  readonly part: string;
  /** Which byte of the value: 0 is coarse, 1 fine, 2 ultra, 3 the last. */
  readonly byte: number;
  /** Bytes of the value. */
  readonly of: number;
  /** What this slot stands at first, and when the unit is to be seen: its own byte of the value, 0 to 255. */
  readonly default: number;
  readonly highlight: number | null;
  /** What each stretch of values does, from the lowest on; on the coarse slot only. */
  readonly ranges: readonly ChartRange[];
  /** Bytes that `ranges` count in: 1 (values of the coarse slot alone) unless one of them starts between two of its steps. */
  readonly rangeBytes: Resolution;
}

/** A stretch of values, both ends counted in. */
export interface ChartRange extends ValueSpan {
  /** What the manual calls it; empty for values that nothing names. */
  readonly name: string;
  /** The function it is in. Values without a function have none. */
  readonly function: string;
  readonly attribute: string;
  /** In the attribute's unit; null when not stated. */
  readonly physical: PhysicalRange | null;
  /** It works so only while another channel stands so. */
  readonly when: Condition | null;
}

/** What every slot of a mode does, with its values. Total: any mode at all has a chart. */
export function modeChart(type: FixtureType, mode: TypeMode): ModeChart {
  const { breaks, virtual } = slotsOf(type, mode);
  const facts = new Map(mode.channels.map((channel) => [channel, factsOf(channel)]));
  return {
    virtual,
    breaks: breaks.map((each) => ({
      break: each.break,
      slots: each.slots.map(({ slot, uses }) => ({
        slot,
        uses: uses.map(({ channel, attribute, cell, byte, of }) => {
          const { first, ranges, bytes } = facts.get(channel) ?? factsOf(channel);
          const own = (value: number) => byteOf(value, byte, of);
          return {
            attribute,
            cell,
            part: channel.part,
            byte,
            of,
            default: own(first),
            highlight: channel.highlight === null ? null : own(channel.highlight),
            ranges: byte === 0 ? ranges : NONE,
            rangeBytes: byte === 0 ? bytes : 1,
          };
        }),
      })),
    })),
  };
}

interface ChannelFacts {
  readonly first: number;
  readonly ranges: readonly ChartRange[];
  readonly bytes: Resolution;
}

const NONE: readonly never[] = Object.freeze([]);

const byteOf = (value: number, byte: number, of: number) => Math.floor(value / 256 ** (of - 1 - byte)) % 256;

function factsOf(channel: TypeChannel): ChannelFacts {
  const { resolution } = channel;
  const ranges = channel.uses.flatMap((use) => rangesOf(use, resolution));
  const step = 256 ** (resolution - 1);
  const first = defaultOf(channel);
  if (ranges.some(({ from, to }) => from % step > 0 || (to + 1) % step > 0))
    return { first, ranges, bytes: resolution };
  const coarse = ranges.map((each) => ({ ...each, from: each.from / step, to: (each.to + 1) / step - 1 }));
  return { first, ranges: coarse, bytes: 1 };
}

/** Every value of a use that has functions lies in one range of each condition, named or not. */
function rangesOf(use: ChannelUse, resolution: Resolution): ChartRange[] {
  const spans = functionSpans(use, resolution);
  const ranges = use.functions.flatMap((each, at) =>
    rangesOfFunction(each, spans[at] ?? { from: each.from, to: each.from }),
  );
  return ranges.sort((a, b) => a.from - b.from || a.to - b.to);
}

function rangesOfFunction(each: ChannelFunction, span: ValueSpan): ChartRange[] {
  const { name, attribute, when, physical } = each;
  const whole = { function: name, attribute, when };
  if (each.ranges.length === 0) return [{ ...span, ...whole, name, physical }];
  const sorted = [...each.ranges].sort((a, b) => a.from - b.from || compareText(a.name, b.name));
  const spans = rangeSpans(sorted, span.to);
  const ranges = sorted.map((range, at) => ({
    ...(spans[at] ?? { from: range.from, to: range.from }),
    ...whole,
    name: range.name,
    physical: range.physical,
  }));
  const lowest = sorted[0]?.from ?? span.from;
  const before = lowest > span.from ? [{ from: span.from, to: lowest - 1, ...whole, name: '', physical: null }] : [];
  return [...before, ...ranges];
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
