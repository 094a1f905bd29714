import type { PlaceGroup } from '#engine/diff/task-groups.ts';

/** The groups that hold the first `count` units; the last of them is cut short. */
export function firstUnits(places: readonly PlaceGroup[], count: number): readonly PlaceGroup[] {
  const first: PlaceGroup[] = [];
  let left = count;
  for (const place of places) {
    if (left <= 0) break;
    first.push(place.units.length <= left ? place : { ...place, units: place.units.slice(0, left) });
    left -= place.units.length;
  }
  return first;
}
