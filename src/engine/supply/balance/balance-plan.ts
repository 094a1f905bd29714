import { ok, type Result, refuse } from '#base/result.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Plan } from '../../model/edit.ts';
import { compareNatural } from '../../model/natural-order.ts';
import type { Circuit, Supply } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { planOf } from '../../patch/chosen.ts';
import type { PlanRefusal } from '../../patch/plan-refusal.ts';
import { seatOf } from '../circuit-feed.ts';
import { circuitLoads } from '../circuit-loads.ts';
import type { OfPhases } from '../current.ts';
import { lineCurrents, type SeatedLoad, supplyLoads } from '../supply-loads.ts';
import { fewestMoves, type Laid } from './fewest-moves.ts';
import { leastPeak } from './least-peak.ts';
import { fixedParts } from './lines.ts';

/** A circuit that goes to another line. */
interface LineMove {
  readonly circuit: string;
  readonly amps: number;
  readonly from: Circuit['phase'];
  readonly to: '1' | '2' | '3';
}

export interface Balance {
  readonly plan: Plan;
  readonly supply: Supply;
  /** By name. Each counts 1. */
  readonly moves: readonly LineMove[];
  /** Amps of each line. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** No way of laying the circuits has a largest line below this. */
  readonly bound: number;
  /** At least so many moves are needed for a largest line that is at most `WORTH` above the best one found. */
  readonly fewest: number;
  /** Circuits whose load is not known in full: the figures are the least there are. */
  readonly unknown: readonly string[];
}

export interface BalanceOptions {
  /** How long to look. */
  readonly steps: number;
}

const DEFAULTS: BalanceOptions = { steps: 200_000 };

/** How much more than the best largest line is worth a circuit that need not be moved. */
export const WORTH = 0.01;

/** In whole milliamps, so that sums are the same in whatever order they come. */
const UNIT = 1000;

/**
 * Moves circuits among the lines of a supply, as few as can be, so that its largest line comes within a hundredth of the least that it can be.
 * Circuits between two lines stay; those without a phase get one. Without those, no largest line is larger afterwards. [SB1]–[SB4]
 */
export function balancePlan(
  rig: Rig,
  supplyKey: string,
  options: Partial<BalanceOptions> = {},
): Result<Balance, PlanRefusal> {
  const { steps } = { ...DEFAULTS, ...options };
  const load = supplyLoads(rig, circuitLoads(rig)).find(({ supply }) => supply.key === supplyKey);
  if (load === undefined) return refuse({ code: 'no-such-supply' });
  const { supply, volts } = load;
  if (supply.phases === 1) return refuse({ code: 'one-phase', supply: supply.name });
  const seated = load.circuits.flatMap(({ card, amps, unknown }) =>
    card === undefined ? [] : [{ card, amps, unknown }],
  );
  const movable = seated.filter(({ card, amps }) => amps > 0 && seatOf(card, supply)?.kind !== 'between').sort(bySize);
  const circuits = movable.map(
    ({ card, amps }): Laid => ({ amps: wholeOf(amps), line: seatOf(card, supply)?.at ?? null }),
  );
  const fixed = fixedParts(betweenLines(supply, seated));
  const best = leastPeak(
    circuits.map(({ amps }) => amps),
    fixed,
    steps,
  );
  const moves = fewestMoves(circuits, fixed, { peak: best.amps * (1 + WORTH), known: best.lines, steps });
  const made = movable.flatMap(({ card, amps }, at): LineMove[] => {
    const to = PHASES[moves.lines[at] ?? 0];
    return to === undefined || to === card.phase ? [] : [{ circuit: card.name, amps, from: card.phase, to }];
  });
  const laid = new Map(movable.map(({ card }, at) => [card.key, PHASES[moves.lines[at] ?? 0]]));
  const plan = planOf(
    rig,
    'balance',
    movable.flatMap(({ card }) => {
      const phase = laid.get(card.key);
      return phase === undefined || phase === card.phase ? [] : setCard('circuit', card.key, { phase });
    }),
  );
  if (!plan.ok) return plan;
  const after = seated.map(({ card, amps }) => ({ amps, card: { phase: laid.get(card.key) ?? card.phase } }));
  return ok({
    plan: plan.value,
    supply,
    moves: made.sort((a, b) => compareNatural(a.circuit, b.circuit)),
    before: load.lines,
    after: lineCurrents(supply, after, volts).lines,
    bound: best.bound / UNIT,
    fewest: moves.bound,
    unknown: seated.filter(({ unknown }) => unknown.length > 0).map(({ card }) => card.name),
  });
}

const PHASES = ['1', '2', '3'] as const;

const wholeOf = (amps: number) => Math.round(amps * UNIT);

/** Largest first; then by where they are, so that those that are alike stand together, and by name. */
function bySize(a: SeatedLoad & { card: Circuit }, b: SeatedLoad & { card: Circuit }): number {
  return (
    wholeOf(b.amps) - wholeOf(a.amps) ||
    (a.card.phase ?? '').localeCompare(b.card.phase ?? '', 'en') ||
    compareNatural(a.card.key, b.card.key)
  );
}

function betweenLines(supply: Supply, circuits: readonly SeatedLoad[]): OfPhases<number> {
  const sums: [number, number, number] = [0, 0, 0];
  for (const { card, amps } of circuits) {
    const seat = seatOf(card, supply);
    if (seat?.kind === 'between') sums[seat.at] += wholeOf(amps);
  }
  return sums;
}
