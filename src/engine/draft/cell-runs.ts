import type { ChannelPlace, PlacedChannel } from './place-channels.ts';

/** Channels whose cells follow each other at one distance. */
export interface CellRun {
  readonly count: number;
  /** Slots from cell to cell; null where that is what the channels of the first cell span, in each break. */
  readonly step: number | null;
  /** Each channel with its place in the first cell. */
  readonly channels: readonly { readonly placed: PlacedChannel; readonly first: ChannelPlace }[];
}

/** The run that some channels of the same cells make; undefined when their cells lie in no such order. */
export function cellRunOf(group: readonly PlacedChannel[]): CellRun | undefined {
  const count = group[0]?.places.length ?? 0;
  const guide = group.find((each) => (each.places[0]?.slots.length ?? 0) > 0) ?? group[0];
  if (guide === undefined || count > RUN_LIMIT) return undefined;
  const order = [...guide.places.keys()].sort((a, b) => firstSlot(guide, a) - firstSlot(guide, b) || a - b);
  const channels = group.flatMap((placed) => {
    const places = order.flatMap((at) => placed.places[at] ?? []);
    const [first] = places;
    return first === undefined ? [] : [{ placed, first, places }];
  });
  const steps = new Map<number, number>();
  for (const { first, places } of channels) {
    const step = stepOf(places);
    if (step === undefined || (step !== null && (steps.get(first.break) ?? step) !== step)) return undefined;
    if (step !== null) steps.set(first.break, step);
  }
  const firsts = channels.map((each) => each.first);
  const spans = new Map([...steps.keys()].map((number) => [number, spanOf(firsts, number)]));
  const step = commonStep(steps, spans);
  return step === undefined ? undefined : { count, step, channels };
}

const RUN_LIMIT = 512;

const firstSlot = (placed: PlacedChannel, at: number) => placed.places[at]?.slots[0] ?? 0;

/** Slots from place to place; null for a virtual channel, undefined where they differ. */
function stepOf(places: readonly ChannelPlace[]): number | null | undefined {
  const [first, second] = places;
  if (first === undefined || second === undefined) return undefined;
  if (first.slots.length === 0) return null;
  const step = (second.slots[0] ?? 0) - (first.slots[0] ?? 0);
  const isEven = places.every(
    (place, at) =>
      place.break === first.break && place.slots.every((slot, byte) => slot === (first.slots[byte] ?? 0) + at * step),
  );
  return isEven && step >= 1 && step <= RUN_LIMIT ? step : undefined;
}

function spanOf(places: readonly ChannelPlace[], number: number): number {
  const slots = places.filter((place) => place.break === number).flatMap((place) => place.slots);
  return Math.max(...slots) - Math.min(...slots) + 1;
}

function commonStep(steps: ReadonlyMap<number, number>, spans: ReadonlyMap<number, number>): number | null | undefined {
  if ([...steps].every(([number, step]) => spans.get(number) === step)) return null;
  const [first, ...others] = new Set(steps.values());
  return others.length === 0 ? first : undefined;
}
