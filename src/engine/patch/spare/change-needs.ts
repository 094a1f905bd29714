import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { createOccupancy, type OccupancyIndex } from '../../address/occupancy-index.ts';
import { isAbsolute, type Universe, universeOf } from '../../model/address.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import type { Edit } from '../../model/edit.ts';
import { footprintsOf } from '../../model/find-mode.ts';
import type { Finding } from '../../model/finding.ts';
import type { Fixture } from '../../model/fixture.ts';
import { type FixtureId, fixtureId } from '../../model/ids.ts';
import type { Mode, Rig } from '../../model/rig.ts';
import { allocatePlan } from '../allocate/allocate-plan.ts';
import { cellEdits, chosen, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { previewTaking } from '../preview-taking.ts';
import { ROWS_AT_ONCE } from '../row-plans.ts';

/** So many more units of a mode. */
export interface MoreUnits {
  readonly mode: Mode;
  readonly count: number;
}

/** What more units would need. */
export interface MoreNeeds {
  readonly units: number;
  readonly slots: number;
  /** How many of them would lie in each universe, ascending. */
  readonly places: readonly { readonly universe: Universe; readonly units: number }[];
  /** Those of these universes that nobody uses now. */
  readonly opened: readonly Universe[];
  /** So many new universes are needed at least. */
  readonly proven: number;
}

/** What so many more units would need, in few new universes, with every unit of the rig where it is. Changes nothing. [PL30] */
export function needsOfMore(
  rig: Rig,
  wanted: readonly MoreUnits[],
  index: OccupancyIndex = createOccupancy(rig),
): Result<MoreNeeds, PlanRefusal> {
  const bad = wanted.find(({ count }) => !Number.isInteger(count) || count < 0);
  if (bad !== undefined) return refuse({ code: 'bad-number', value: bad.count });
  const units = wanted.reduce((total, { count }) => total + count, 0);
  if (units === 0) return refuse({ code: 'nothing-chosen' });
  if (units > ROWS_AT_ONCE) return refuse({ code: 'bad-number', value: units });
  const added = addedRows(rig, wanted);
  const ids = added.map(({ fixture }) => fixture);
  const made = allocatePlan(applyEdits(rig, added), ids, {}, index);
  if (!made.ok) return made;
  const slots = wanted.reduce((total, { mode, count }) => total + count * slotsOf(mode.footprints), 0);
  const places = placesOf(made.value.plan.edits);
  const opened = places.map(({ universe }) => universe).filter((universe) => index.of(universe).seats.length === 0);
  return ok({ units, slots, places, opened, proven: made.value.bounds.proven });
}

type AddedRow = Extract<Edit, { kind: 'add-fixture' }>;

/** Rows that are in no document, under ids that no unit of the rig has. */
function addedRows(rig: Rig, wanted: readonly MoreUnits[]): readonly AddedRow[] {
  let next = 0;
  const freshId = (): FixtureId => {
    for (;;) {
      const id = fixtureId(`more ${String(next++).padStart(6, '0')}`);
      if (getRow(rig.fixtures, id) === undefined) return id;
    }
  };
  return wanted.flatMap(({ mode: { type, mode }, count }) =>
    Array.from({ length: count }, (): AddedRow => ({ kind: 'add-fixture', fixture: freshId(), cells: { type, mode } })),
  );
}

/** Where units come to lie by an allocation: a unit is counted where its first break is. */
function placesOf(edits: readonly Edit[]): MoreNeeds['places'] {
  const seen = new Set<FixtureId>();
  const units = new Map<Universe, number>();
  for (const edit of edits) {
    if (edit.kind !== 'set-cell' || seen.has(edit.fixture)) continue;
    if (typeof edit.value !== 'number' || !isAbsolute(edit.value)) continue;
    seen.add(edit.fixture);
    const universe = universeOf(edit.value);
    units.set(universe, (units.get(universe) ?? 0) + 1);
  }
  return [...units].sort(([a], [b]) => a - b).map(([universe, count]) => ({ universe, units: count }));
}

const slotsOf = (footprints: readonly number[]) => footprints.reduce((total, slots) => total + slots, 0);

/** What another mode of units would need. */
export interface ModeNeeds {
  /** Units that would change. */
  readonly units: number;
  /** So many more slots; fewer when negative. */
  readonly slots: number;
  /** Blockers that are not there now. */
  readonly raised: number;
  /** Units whose address would move to clear them, by id; some of them may be others than those that change. */
  readonly moving: readonly FixtureId[];
  /** Universes that nobody uses now and that the moves would use. */
  readonly opened: readonly Universe[];
  /** Blockers that no move clears, as where units are locked. */
  readonly left: readonly Finding[];
}

/** What it would need to set units to another mode: which blockers that raises, and which units would move to clear them. Changes nothing. [PL31] */
export function needsOfMode(
  rig: Rig,
  ids: readonly FixtureId[],
  mode: Mode,
  index: OccupancyIndex = createOccupancy(rig),
): Result<ModeNeeds, PlanRefusal> {
  const fixtures = chosen(rig, ids);
  if (!fixtures.ok) return fixtures;
  const edits = fixtures.value.flatMap((fixture) => modeEdits(fixture, mode));
  const plan = planOf(rig, 'edit', edits);
  if (!plan.ok) return plan;
  const { raised, moves, left } = previewTaking(rig, plan.value);
  const changing = fixtures.value.filter((fixture) => modeEdits(fixture, mode).length > 0);
  const slots = changing.reduce(
    (total, fixture) => total + slotsOf(mode.footprints) - slotsOf(footprintsOf(rig, fixture)),
    0,
  );
  const moving = [...new Set(moves.flatMap((edit) => (edit.kind === 'set-cell' ? [edit.fixture] : [])))].sort();
  const universes = new Set(
    moves.flatMap((edit) =>
      edit.kind === 'set-cell' && typeof edit.value === 'number' && isAbsolute(edit.value)
        ? [universeOf(edit.value)]
        : [],
    ),
  );
  const opened = [...universes].filter((at) => index.of(at).seats.length === 0).sort((a, b) => a - b);
  return ok({ units: changing.length, slots, raised: raised.length, moving, opened, left });
}

const modeEdits = (fixture: Fixture, { type, mode }: Mode): readonly Edit[] => [
  ...cellEdits(fixture, 'type', type),
  ...cellEdits(fixture, 'mode', mode === '' ? null : mode),
];
