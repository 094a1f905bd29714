import type { Fault, Hire, Reading, RigRecord, Swap } from '../model/record.ts';

/** A reading with how much it is more than the one before of its kind; null where that says nothing. */
export interface ReadingStep {
  readonly reading: Reading;
  readonly hours: number | null;
  /** The firmware read before, where it was another; empty: none, or the same. */
  readonly before: string;
}

/** Something that happened to a unit. */
export type Chapter =
  | { readonly kind: 'fault'; readonly id: string; readonly on: string; readonly fault: Fault }
  | { readonly kind: 'swap'; readonly id: string; readonly on: string; readonly swap: Swap }
  | { readonly kind: 'reading'; readonly id: string; readonly on: string; readonly step: ReadingStep }
  | { readonly kind: 'hire'; readonly id: string; readonly on: string; readonly hire: Hire };

/** Everything of one unit from first to last: its faults, swaps, readings, and what of it is hired. [UK8] */
export function unitStory(record: RigRecord, unit: string): readonly Chapter[] {
  const ofUnit = (row: { readonly unit: string }) => row.unit === unit;
  const chapters: Chapter[] = [
    ...record.hires.filter(ofUnit).map((hire): Chapter => ({ kind: 'hire', id: hire.id, on: hire.due, hire })),
    ...record.faults.filter(ofUnit).map((fault): Chapter => ({ kind: 'fault', id: fault.id, on: fault.seenOn, fault })),
    ...record.swaps.filter(ofUnit).map((swap): Chapter => ({ kind: 'swap', id: swap.id, on: swap.on, swap })),
    ...readingSteps(record, unit).map(
      (step): Chapter => ({ kind: 'reading', id: step.reading.id, on: step.reading.on, step }),
    ),
  ];
  // A sort keeps what is of one day in the order above.
  return chapters.sort((a, b) => (a.on === b.on ? 0 : a.on < b.on ? -1 : 1));
}

/** The readings of a unit in the order of their days, each with the change since the one before of its kind. [UK7] */
export function readingSteps(record: RigRecord, unit: string): readonly ReadingStep[] {
  const swaps = record.swaps.filter((swap) => swap.unit === unit);
  const last = new Map<Reading['of'], Reading>();
  return record.readings
    .filter((reading) => reading.unit === unit)
    .map((reading) => {
      const before = last.get(reading.of);
      last.set(reading.of, reading);
      // Another device counts from where it stands: nothing follows from the one before.
      const isOther = before === undefined || swaps.some(({ on }) => before.on <= on && on <= reading.on);
      return {
        reading,
        hours: isOther || reading.hours === null || before.hours === null ? null : reading.hours - before.hours,
        before: isOther || before.firmware === reading.firmware ? '' : before.firmware,
      };
    });
}
