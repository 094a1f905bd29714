/** A bin while it is being packed: what lies in it, and how much of it is left. */
export interface Bin {
  readonly capacity: number;
  /** A part of a universe that others use already; the rest of a packing opens new ones. */
  readonly isRoom: boolean;
  readonly widths: number[];
  left: number;
}

/** Widths to be packed: into `rooms` of their own sizes first, then into as many bins of `capacity` as it takes. */
export interface PackJob {
  /** Whole numbers from 1 to the capacity. */
  readonly widths: readonly number[];
  readonly rooms: readonly number[];
  readonly capacity: number;
}

export const emptyBin = (capacity: number, isRoom: boolean): Bin => ({ capacity, isRoom, widths: [], left: capacity });

export function put(bin: Bin, width: number): void {
  bin.widths.push(width);
  bin.left -= width;
}

/** How many bins beside the rooms hold something. */
export function countOpened(bins: readonly Bin[]): number {
  return bins.reduce((total, bin) => total + Number(!bin.isRoom && bin.widths.length > 0), 0);
}

/** A budget of work, counted in steps instead of time, so that the same question always gets the same answer. */
export interface Budget {
  steps: number;
}
