import { ok, type Result, refuse } from '#base/result.ts';
import { getRow } from '#base/table.ts';
import { createOccupancy, type OccupancyIndex } from '../../address/occupancy-index.ts';
import { checkRig } from '../../check/check-rig.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import type { Plan } from '../../model/edit.ts';
import { ADDRESS_FIELDS } from '../../model/field.ts';
import type { Finding } from '../../model/finding.ts';
import type { FixtureId } from '../../model/ids.ts';
import { isLocked } from '../../model/locked.ts';
import type { Rig } from '../../model/rig.ts';
import { cellEdits, planOf } from '../chosen.ts';
import type { PlanRefusal } from '../plan-refusal.ts';
import { keepBest } from './keep-best.ts';
import { type Moved, type MovedBreak, moveAway } from './move-away.ts';
import { badCost, REPAIR_DEFAULTS, type RepairOptions } from './repair-options.ts';
import { type Standing, standingsOf } from './standing.ts';
import type { Span } from './taken-spans.ts';

/** Units that act as one, or one alone, and which of their breaks (1-based) go where. */
interface RepairMove {
  readonly fixtures: readonly FixtureId[];
  readonly breaks: readonly MovedBreak[];
  /** Of all its units together. */
  readonly cost: number;
}

export interface Repair {
  readonly plan: Plan;
  /** By the address they leave. */
  readonly moves: readonly RepairMove[];
  readonly cost: number;
  /** Whether no set of moves that clears as much costs less. */
  readonly isLeast: boolean;
  /** Clashes among units that cannot be moved; they stay. */
  readonly left: readonly Finding[];
  /** The locked units in them, by id: unlocked, they could be moved. [LK5] */
  readonly held: readonly FixtureId[];
}

/**
 * Clears every clash and every run past the end, and moves the units that cost least: what stays is the best set that can
 * stay. What moves goes to free room, in its own universe if there is some. [PL23] [PL24]
 */
export function repairPlan(
  rig: Rig,
  options: Partial<RepairOptions> = {},
  index: OccupancyIndex = createOccupancy(rig),
): Result<Repair, PlanRefusal> {
  const full = { ...REPAIR_DEFAULTS, ...options };
  const bad = badCost(full);
  if (bad !== undefined) return refuse({ code: 'bad-number', value: bad });
  const standings = standingsOf(rig, full, index);
  const { going, isProven } = thoseThatGo(standings, full.steps);
  const moved = moveAway(going, index);
  return moved.ok ? repairOf(rig, moved.value, isProven) : moved;
}

function thoseThatGo(standings: readonly Standing[], steps: number) {
  const fixed = standings.filter(({ isFixed }) => isFixed).flatMap(({ spans }) => spans);
  const isHit = hitTest(fixed);
  const mayStay = standings.filter(({ isFixed, isBroken, spans }) => !isFixed && !isBroken && !spans.some(isHit));
  const { kept, isProven } = keepBest(
    mayStay.map(({ cost, spans }) => ({ weight: cost, spans })),
    steps,
  );
  const stays = new Set<Standing>(mayStay.filter((_, at) => kept[at]));
  return { going: standings.filter((standing) => !standing.isFixed && !stays.has(standing)), isProven };
}

/** Whether a span meets any of `spans`. */
function hitTest(spans: readonly Span[]): (span: Span) => boolean {
  const sorted = [...spans].sort((a, b) => a.first - b.first);
  // How far everything reaches that starts no later than each.
  const reach: number[] = [];
  for (const { last } of sorted) reach.push(Math.max(reach[reach.length - 1] ?? 0, last));
  return ({ first, last }) => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sorted[middle] as Span).first <= last) low = middle + 1;
      else high = middle;
    }
    return low > 0 && (reach[low - 1] as number) >= first;
  };
}

function repairOf(rig: Rig, moved: readonly Moved[], isLeast: boolean): Result<Repair, PlanRefusal> {
  const edits = moved.flatMap(({ standing: { fixtures }, breaks }) =>
    fixtures.flatMap((fixture) =>
      breaks.flatMap(({ part, to }) =>
        cellEdits(fixture, ADDRESS_FIELDS[part - 1] as (typeof ADDRESS_FIELDS)[number], to),
      ),
    ),
  );
  const left = checkRig(applyEdits(rig, edits)).filter(isClash);
  const held = heldIn(rig, left);
  if (edits.length === 0 && held.length > 0) return refuse({ code: 'held', fixtures: held });
  const plan = planOf(rig, 'repair', edits);
  if (!plan.ok) return plan;
  const moves = moved.map(({ standing: { fixtures, cost }, breaks }) => ({
    fixtures: fixtures.map(({ id }) => id),
    breaks,
    cost,
  }));
  return ok({ plan: plan.value, moves, cost: moves.reduce((total, { cost }) => total + cost, 0), isLeast, left, held });
}

/** The locked units among those of `findings`, by id. */
function heldIn(rig: Rig, findings: readonly Finding[]): readonly FixtureId[] {
  const ids = new Set(findings.flatMap(({ fixtures }) => fixtures));
  return [...ids].filter((id) => isLockedIn(rig, id)).sort();
}

function isLockedIn(rig: Rig, id: FixtureId): boolean {
  const fixture = getRow(rig.fixtures, id);
  return fixture !== undefined && isLocked(fixture);
}

const isClash = ({ rule }: Finding) => rule === 'slots-claimed-twice' || rule === 'past-the-end';
