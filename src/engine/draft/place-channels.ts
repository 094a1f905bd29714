import type { FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { cellsOf } from '../type/cells-of.ts';
import { isBreak } from '../type/slots-of.ts';

/** Where a channel stands once. */
export interface ChannelPlace {
  /** The cell it is in; empty for the body. */
  readonly cell: string;
  readonly break: number;
  /** Slots of the break, coarse first; none: virtual. */
  readonly slots: readonly number[];
}

export interface PlacedChannel {
  readonly channel: TypeChannel;
  /** At least one. */
  readonly places: readonly ChannelPlace[];
}

/** Every channel of a mode that takes slots of it, or is virtual, with every place it stands in. */
export function placeChannels(type: FixtureType, mode: TypeMode): readonly PlacedChannel[] {
  const cells = cellsOf(type, mode);
  return mode.channels.flatMap((channel) => {
    const places = (cells.get(channel.part) ?? []).flatMap((cell): ChannelPlace[] => {
      const number = channel.break === 'of-copy' ? (cell.ownBreak ?? 1) : channel.break;
      const before = cell.before.get(number) ?? 0;
      const slots = channel.offsets.map((offset) => before + offset);
      return isBreak(number) && slots.every((slot) => slot >= 1) ? [{ cell: cell.name, break: number, slots }] : [];
    });
    return places.length === 0 ? [] : [{ channel, places }];
  });
}
