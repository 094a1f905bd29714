interface Place {
  readonly units: readonly unknown[];
}

/** The groups that hold the first `count` units; the last of them is cut short. */
export function firstUnits<Group extends Place>(places: readonly Group[], count: number): readonly Group[] {
  const first: Group[] = [];
  let left = count;
  for (const place of places) {
    if (left <= 0) break;
    first.push(place.units.length <= left ? place : { ...place, units: place.units.slice(0, left) });
    left -= place.units.length;
  }
  return first;
}
