import { rowsOf } from '#base/table.ts';
import { slotOf, universeOf } from '#engine/model/address.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';

/**
 * The rules of SPEC.md written once more, slot by slot and pair by pair, with nothing kept, packed or shared with the
 * engine's own check: what the laws hold it to. Each finding is one line in the form of `printFinding`.
 */
export function naiveCheck(rig: Rig): string[] {
  const fixtures = [...rowsOf(rig.fixtures)];
  return [
    ...slotLines(rig, fixtures),
    ...fixtures.flatMap((fixture) => ownLines(rig, fixture)),
    ...channelLines(fixtures),
    ...placeLines(fixtures),
  ].sort();
}

const sameNames = (a: Fixture, b: Fixture) =>
  foldName(a.type) === foldName(b.type) && foldName(a.mode) === foldName(b.mode);

const sameStarts = (a: Fixture, b: Fixture) => JSON.stringify(a.addresses) === JSON.stringify(b.addresses);

const asOne = (a: Fixture, b: Fixture) =>
  a.channel !== null && a.channel === b.channel && sameNames(a, b) && sameStarts(a, b);

function footprintsIn(rig: Rig, fixture: Fixture): readonly number[] | undefined {
  for (const mode of rowsOf(rig.modes)) {
    if (foldName(mode.type) === foldName(fixture.type) && foldName(mode.mode) === foldName(fixture.mode)) {
      return mode.footprints;
    }
  }
  return undefined;
}

/** The slots of each break as `universe:slot` numbers, those past 512 left out. */
function slotsOfBreaks(
  rig: Rig,
  fixture: Fixture,
): { readonly part: number; readonly slots: number[]; readonly over: number }[] {
  const footprints = footprintsIn(rig, fixture);
  return fixture.addresses.flatMap((start, part) => {
    const footprint = footprints === undefined ? 1 : (footprints[part] ?? 0);
    if (start === null || footprint === 0) return [];
    const slots = Array.from({ length: footprint }, (_, i) => start + i).filter(
      (at) => universeOf(at as never) === universeOf(start),
    );
    return [{ part: part + 1, slots, over: footprint - slots.length }];
  });
}

function slotLines(rig: Rig, fixtures: readonly Fixture[]): string[] {
  const claimants = new Map<number, Set<Fixture>>();
  const twice = new Map<number, Set<Fixture>>();
  for (const fixture of fixtures) {
    for (const { slots } of slotsOfBreaks(rig, fixture)) {
      for (const slot of slots) {
        const set = claimants.get(slot) ?? new Set();
        claimants.set(slot, set);
        if (set.has(fixture)) twice.set(slot, (twice.get(slot) ?? new Set()).add(fixture));
        set.add(fixture);
      }
    }
  }
  const lines = runsOf(claimants).map(({ first, last, fixtures: set }) => {
    const members = [...set];
    const one = members.every((each) => asOne(each, members[0] as Fixture));
    return `${one ? 'note acting-as-one' : 'blocker slots-claimed-twice'} ${spell(first, last)} ${idsText(members)}`;
  });
  const own = fixtures.flatMap((fixture) => {
    const mine = new Map([...twice].filter(([, set]) => set.has(fixture)).map(([slot]) => [slot, new Set([fixture])]));
    return ownRuns([...mine.keys()]).map(
      ([first, last]) => `blocker slots-claimed-twice ${spell(first, last)} ${fixture.id}`,
    );
  });
  return [...lines, ...own];
}

interface NaiveRun {
  readonly first: number;
  last: number;
  readonly fixtures: Set<Fixture>;
  readonly crowded: boolean;
}

/** Maximal runs of one set; slots of more than 64 claimants run on while neighbours share one. */
function runsOf(claimants: ReadonlyMap<number, ReadonlySet<Fixture>>): NaiveRun[] {
  const runs: NaiveRun[] = [];
  for (const slot of [...claimants.keys()].sort((a, b) => a - b)) {
    const set = claimants.get(slot) ?? new Set();
    if (set.size < 2) continue;
    const crowded = set.size > 64;
    const run = runs[runs.length - 1];
    const beside =
      run !== undefined && run.last === slot - 1 && universeOf(slot as never) === universeOf(run.last as never);
    const before = claimants.get(slot - 1) ?? new Set();
    const goesOn = crowded
      ? [...set].some((each) => before.has(each))
      : [...set].every((each) => before.has(each)) && before.size === set.size;
    if (beside && run.crowded === crowded && goesOn) {
      run.last = slot;
      for (const fixture of set) run.fixtures.add(fixture);
    } else runs.push({ first: slot, last: slot, fixtures: new Set(set), crowded });
  }
  return runs;
}

function ownRuns(slots: number[]): [number, number][] {
  const runs: [number, number][] = [];
  for (const slot of slots.sort((a, b) => a - b)) {
    const run = runs[runs.length - 1];
    if (run !== undefined && run[1] === slot - 1 && universeOf(slot as never) === universeOf(run[1] as never))
      run[1] = slot;
    else runs.push([slot, slot]);
  }
  return runs;
}

const spell = (first: number, last: number) =>
  `${universeOf(first as never)}:${slotOf(first as never)}-${slotOf(last as never)}`;

const idsText = (fixtures: readonly Fixture[]) =>
  fixtures
    .map(({ id }) => id)
    .sort()
    .join(' ');

function ownLines(rig: Rig, fixture: Fixture): string[] {
  const lines = fixture.unreadable.map(
    (cell) => `caution unreadable ${cell.field} ${JSON.stringify(cell.value)} ${fixture.id}`,
  );
  for (const { part, slots, over } of slotsOfBreaks(rig, fixture)) {
    const first = slots[0] ?? 0;
    if (over > 0)
      lines.push(
        `blocker past-the-end ${spell(first, first + slots.length - 1)} break ${part} over ${over} ${fixture.id}`,
      );
  }
  const footprints = footprintsIn(rig, fixture);
  const typeKnown = [...rowsOf(rig.modes)].some((mode) => foldName(mode.type) === foldName(fixture.type));
  if (!typeKnown) lines.push(`caution unknown-type ${fixture.id}`);
  else if (footprints === undefined) lines.push(`caution unknown-mode ${fixture.id}`);
  const patched = slotsOfBreaks(rig, fixture).length > 0;
  const missing = (footprints ?? [1]).flatMap((footprint, part) =>
    footprint > 0 && (fixture.addresses[part] ?? null) === null ? [part + 1] : [],
  );
  if (!patched && missing.length > 0) lines.push(`caution unpatched ${fixture.id}`);
  if (patched) lines.push(...missing.map((part) => `caution unpatched break ${part} ${fixture.id}`));
  return lines;
}

function channelLines(fixtures: readonly Fixture[]): string[] {
  const channels = new Set(fixtures.flatMap(({ channel }) => channel ?? []));
  return [...channels].flatMap((channel) => {
    const users = fixtures.filter((fixture) => fixture.channel === channel);
    const one = users[0] as Fixture;
    if (users.some((each) => !sameNames(each, one))) return [`caution channel-on-unlike #${channel} ${idsText(users)}`];
    if (users.some((each) => !sameStarts(each, one))) return [`note channel-shared #${channel} ${idsText(users)}`];
    return [];
  });
}

function placeLines(fixtures: readonly Fixture[]): string[] {
  const placed = fixtures.filter(({ position, unit }) => foldName(position) !== '' && foldName(unit) !== '');
  const same = (a: Fixture, b: Fixture) =>
    foldName(a.position) === foldName(b.position) && foldName(a.unit) === foldName(b.unit);
  return placed.flatMap((fixture) => {
    const all = placed.filter((each) => same(each, fixture));
    return all.length > 1 && all.every((each) => fixture.id <= each.id) ? [`caution same-place ${idsText(all)}`] : [];
  });
}
