/** What is along a run, and where. */
export interface Placed {
  readonly id: string;
  readonly along: number;
}

/** Between neighbours, so that much can be put between them before anything else has to move. */
const STEP = 1024;
const FARTHEST = 1_000_000_000;

/**
 * Gives `ids` places between `chain[at - 1]` and `chain[at]`, in whole numbers with room on both sides, so that what two people put
 * into different stretches merges. Where there is no room, everything is spread anew: then the answer has all of the chain.
 */
export function placeAlong(chain: readonly Placed[], at: number, ids: readonly string[]): readonly Placed[] {
  const left = chain[at - 1]?.along;
  const right = chain[at]?.along;
  const [from, gap] = roomBetween(left, right, ids.length);
  const placed = ids.map((id, i) => ({ id, along: Math.floor(from + gap * (i + 1)) }));
  const places = [left, ...placed.map(({ along }) => along), right].filter((each) => each !== undefined);
  if (isAscending(places) && placed.every(({ along }) => Math.abs(along) <= FARTHEST)) return placed;
  return [...chain.slice(0, at), ...ids.map((id) => ({ id })), ...chain.slice(at)].map(({ id }, i) => ({
    id,
    along: (i + 1) * STEP,
  }));
}

/** Where to count from, and in which steps. */
function roomBetween(left: number | undefined, right: number | undefined, count: number): readonly [number, number] {
  if (left === undefined) return [(right ?? STEP * (count + 1)) - STEP * (count + 1), STEP];
  if (right === undefined) return [Math.floor(left), STEP];
  return [Math.floor(left), (right - left) / (count + 1)];
}

/** Without ties, so that the order is the one asked for whatever it was before. */
const isAscending = (places: readonly number[]) => places.every((place, i) => i === 0 || place > (places[i - 1] ?? 0));
