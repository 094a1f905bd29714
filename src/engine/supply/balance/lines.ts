import type { OfPhases } from '../current.ts';

/** What circuits between two lines put on a line that is none of the plan's business: its current is |star + (along, across)|. */
export interface FixedPart {
  readonly along: number;
  readonly across: number;
}

/** The current of a line that carries `star` amps to neutral beside its fixed part: it grows with `star`. */
export const lineAmps = (star: number, { along, across }: FixedPart): number => Math.hypot(star + along, across);

/** How much a line may carry to neutral for its current not to be over `most`; less than 0 when its fixed part alone is. */
export function roomFor(most: number, { along, across }: FixedPart): number {
  return most < Math.abs(across) ? -1 : Math.sqrt(most * most - across * across) - along;
}

/** The fixed parts of three lines of the amps between 1 and 2, 2 and 3, 3 and 1: each leads one of its lines by 30 degrees, and lags the other. [SU11] */
export function fixedParts([a, b, c]: OfPhases<number>): OfPhases<FixedPart> {
  const cos = Math.sqrt(3) / 2;
  const part = (leads: number, lags: number) => ({ along: cos * (leads + lags), across: (leads - lags) / 2 });
  return [part(a, c), part(b, a), part(c, b)];
}
