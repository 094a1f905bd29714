import type { TypeChannel } from '../model/fixture-type.ts';
import { type Pin, pinnedMode } from './pin.ts';
import { slotsOf } from './slots-of.ts';
import { type ChartUse, modeChart } from './type-chart.ts';

/** What a slot of a pinned mode does, and what its manual calls it. */
export interface PinnedUse extends ChartUse {
  /** Empty when the manual calls it by its attribute, or names only stretches of its values. */
  readonly name: string;
}

/**
 * What slot `own` of break `part` (both 1-based) does: nothing at all for a hole, several things where the type takes it
 * twice; null where the pinned mode has no such slot, so that nobody knows. Charted once for each pin.
 */
export function pinnedUses(pin: Pin, part: number, own: number): readonly PinnedUse[] | null {
  return chartOf(pin).get(part)?.[own - 1] ?? null;
}

type PinChart = ReadonlyMap<number, readonly (readonly PinnedUse[])[]>;

// Pins never change, and a rig says the same few thousands of times.
const charts = new WeakMap<Pin, PinChart>();

function chartOf(pin: Pin): PinChart {
  const known = charts.get(pin);
  if (known !== undefined) return known;
  const chart = chartAnew(pin);
  charts.set(pin, chart);
  return chart;
}

function chartAnew(pin: Pin): PinChart {
  const mode = pinnedMode(pin);
  if (mode === undefined) return new Map();
  const chart = modeChart(pin.type, mode);
  const { breaks } = slotsOf(pin.type, mode);
  return new Map(
    chart.breaks.map((each, at) => {
      const channelAt = (slot: number, use: number) => breaks[at]?.slots[slot]?.uses[use]?.channel;
      const slots = each.slots.map(({ uses }, slot) =>
        uses.map((use, nth): PinnedUse => ({ ...use, name: nameOf(channelAt(slot, nth)) })),
      );
      return [each.break, slots];
    }),
  );
}

/** The name of a channel's first function: other functions with names of their own would make it one of a stretch only. */
function nameOf(channel: TypeChannel | undefined): string {
  const [first, ...others] = channel?.uses.flatMap((use) => use.functions) ?? [];
  if (channel === undefined || first === undefined || others.some(isNamed)) return '';
  return isNamed(first) && first.name !== channel.uses[0]?.attribute ? first.name : '';
}

/** Files call what has no name by its attribute and a number. */
const isNamed = ({ name, attribute }: { readonly name: string; readonly attribute: string }) =>
  name.trim() !== '' && (attribute === '' || !name.startsWith(attribute));
