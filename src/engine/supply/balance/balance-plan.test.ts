import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { statedRig } from '#tests/support/stated-rig.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { setCard } from '../../model/card-edits.ts';
import type { Rig } from '../../model/rig.ts';
import { circuitLoads } from '../circuit-loads.ts';
import type { OfPhases } from '../current.ts';
import { supplyLoads } from '../supply-loads.ts';
import { type Balance, balancePlan, WORTH } from './balance-plan.ts';
import { fewestMoves, type Laid } from './fewest-moves.ts';
import { leastPeak, lowerBound } from './least-peak.ts';
import { fixedParts, lineAmps } from './lines.ts';

const STEPS = 200_000;

/** Small enough that every way of laying them is looked at; sizes that repeat come often. */
function randomCircuits(rng: Rng, most: number): readonly Laid[] {
  const sizes = [rng.int(9000) + 1, rng.int(9000) + 1, 2000];
  return Array.from({ length: 1 + rng.int(most) }, () => ({
    amps: rng.int(2) === 0 ? rng.pick(sizes) : rng.int(9000) + 1,
    line: rng.pick([0, 0, 1, 2, null]),
  })).sort((a, b) => b.amps - a.amps || (a.line ?? -1) - (b.line ?? -1));
}

const randomFixed = (rng: Rng) =>
  fixedParts(rng.int(2) === 0 ? [0, 0, 0] : ([rng.int(5000), rng.int(5000), 0] as OfPhases<number>));

/** Every way of laying `count` circuits onto three lines. */
function* ways(count: number): Generator<readonly number[]> {
  for (let way = 0; way < 3 ** count; way++) {
    yield Array.from({ length: count }, (_, at) => Math.floor(way / 3 ** at) % 3);
  }
}

/** Written once more, with nothing kept. */
function peak(circuits: readonly Laid[], lines: readonly number[], fixed: ReturnType<typeof fixedParts>): number {
  const on = (line: number) => circuits.filter((_, at) => lines[at] === line).reduce((sum, { amps }) => sum + amps, 0);
  return Math.max(...fixed.map((part, line) => lineAmps(on(line), part)));
}

describe('balancing three lines', () => {
  it('[SB1] [SB2] finds the least peak and the fewest moves that every way of laying them has, in thousands of small cases', () => {
    const rng = seededRng(71);
    for (let round = 0; round < 3000; round++) {
      const circuits = randomCircuits(rng, 6);
      const fixed = randomFixed(rng);
      const found = leastPeak(
        circuits.map(({ amps }) => amps),
        fixed,
        STEPS,
      );
      const all = [...ways(circuits.length)].map((lines) => ({
        peak: peak(circuits, lines, fixed),
        moves: circuits.filter(({ line }, at) => line !== lines[at]).length,
      }));
      const least = Math.min(...all.map((way) => way.peak));
      expect(found.amps, `round ${round}`).toBeCloseTo(least, 6);
      expect(peak(circuits, found.lines, fixed)).toBeCloseTo(least, 6);
      expect(found.bound).toBeLessThanOrEqual(least + 1e-6);
      const limit = found.amps * (1 + WORTH);
      const moves = fewestMoves(circuits, fixed, { peak: limit, known: found.lines, steps: STEPS });
      const fewest = Math.min(...all.filter((way) => way.peak <= limit * (1 + 1e-12)).map((way) => way.moves));
      expect(moves.count, `round ${round}`).toBe(fewest);
      expect(moves.bound).toBe(fewest);
      expect(peak(circuits, moves.lines, fixed)).toBeLessThanOrEqual(limit + 1e-6);
    }
  });

  it('[SB3] with few steps still has a way, and bounds that hold', () => {
    const rng = seededRng(73);
    for (let round = 0; round < 500; round++) {
      const circuits = randomCircuits(rng, 7);
      const fixed = randomFixed(rng);
      const loads = circuits.map(({ amps }) => amps);
      const short = leastPeak(loads, fixed, rng.int(12));
      const long = leastPeak(loads, fixed, STEPS);
      expect(short.lines.length).toBe(circuits.length);
      expect(short.amps).toBeGreaterThanOrEqual(long.amps - 1e-6);
      expect(short.bound).toBeLessThanOrEqual(long.amps + 1e-6);
      expect(lowerBound(loads, fixed)).toBeLessThanOrEqual(long.amps + 1e-6);
      const moved = { peak: short.amps * (1 + WORTH), known: short.lines };
      const few = fewestMoves(circuits, fixed, { ...moved, steps: rng.int(12) });
      const fewest = fewestMoves(circuits, fixed, { ...moved, steps: STEPS });
      expect(few.count).toBeGreaterThanOrEqual(fewest.count);
      expect(few.bound).toBeLessThanOrEqual(fewest.count);
      expect(peak(circuits, few.lines, fixed)).toBeLessThanOrEqual(moved.peak + 1e-6);
    }
  });
});

/** A rig of one three-phase supply: `C1 1 1000` is a circuit of that phase and watts, `-` of no phase. */
function supplyRig(text: string): Rig {
  const circuits = text.split('\n').map((line) => line.trim().split(' '));
  const rig = statedRig(
    circuits.map(([circuit = '', , watts]) => ({ circuit, type: `T${watts}` })),
    Object.fromEntries(circuits.map(([, , watts]) => [`T${watts}`, { power: Number(watts), powerFactor: 1 }])),
  );
  return applyEdits(rig, [
    ...setCard('supply', 'mains', { name: 'Mains', phases: '3', volts: 230 }),
    ...circuits.flatMap(([name = '', phase]) =>
      setCard('circuit', name.toLowerCase(), { name, supply: 'Mains', phase: phase === '-' ? null : (phase ?? null) }),
    ),
  ]);
}

const balance = (rig: Rig, steps?: number) => balancePlan(rig, 'mains', steps === undefined ? {} : { steps });
const moved = (rig: Rig) => {
  const made = balance(rig);
  return made.ok ? made.value.moves.map(({ circuit, from, to }) => `${circuit} ${from ?? '-'}>${to}`) : made.error.code;
};

/** Circuits of unlike sizes; some between two lines, some on no phase when asked. */
function randomSupply(rng: Rng, phases: readonly string[]): string {
  return Array.from(
    { length: 2 + rng.int(9) },
    (_, at) => `C${at + 1} ${rng.pick(phases)} ${100 + 50 * rng.int(60)}`,
  ).join('\n');
}

const after = (rig: Rig, { plan }: Balance) => applyEdits(rig, plan.edits);
const linesOf = (rig: Rig) => supplyLoads(rig, circuitLoads(rig))[0]?.lines ?? [];

describe('a plan to balance', () => {
  it('[SB1] moves as few circuits as can be', () => {
    expect(moved(supplyRig('C1 1 1000\nC2 1 1000\nC3 1 1000'))).toEqual(['C2 1>2', 'C3 1>3']);
    expect(moved(supplyRig('C1 1 3000\nC2 1 1000\nC3 2 2000\nC4 2 1000\nC5 3 2000'))).toEqual(['C2 1>3']);
    expect(moved(supplyRig('C1 1 1000\nC2 2 1000\nC3 3 1000'))).toBe('changes-nothing');
  });

  it('[SB4] leaves circuits between two lines, and gives a phase to those without', () => {
    const rig = supplyRig('C1 1-2 4000\nC2 1 1000\nC3 2 1000\nC4 - 500');
    // 10.0 A between 1 and 2; all the others on 3 are 10.9 A, and any of them on 1 or 2 would make 12 A there.
    expect(moved(rig)).toEqual(['C2 1>3', 'C3 2>3', 'C4 ->3']);
  });

  it('[SB1] refuses what has nothing to balance', () => {
    const one = applyEdits(supplyRig('C1 1 1000'), setCard('supply', 'mains', { phases: '1' }));
    expect(moved(one)).toBe('one-phase');
    expect(balancePlan(one, 'elsewhere')).toEqual({ ok: false, error: { code: 'no-such-supply' } });
  });

  it('[SB1]–[SB4] is never worse than before, says what comes, twice is once, and knows no order of rows or cards', () => {
    const rng = seededRng(79);
    for (let round = 0; round < 400; round++) {
      const phases = rng.int(3) === 0 ? ['1', '2', '3', '-', '2-3'] : ['1', '1', '2', '3', '1-2'];
      const rig = supplyRig(randomSupply(rng, phases));
      const made = balance(rig);
      const turned = {
        ...rig,
        cards: tableOf([...rowsOf(rig.cards)].reverse()),
        fixtures: tableOf([...rowsOf(rig.fixtures)].reverse()),
      };
      expect(balance(turned)).toEqual(made);
      if (!made.ok) {
        expect(made.error.code).toBe('changes-nothing');
        continue;
      }
      const then = after(rig, made.value);
      expect(linesOf(then)).toEqual(made.value.after);
      expect(linesOf(rig)).toEqual(made.value.before);
      const [was, is] = [Math.max(...made.value.before), Math.max(...made.value.after)];
      if (!phases.includes('-')) expect(is).toBeLessThanOrEqual(was + 1e-6);
      // Of thousandths of an ampere, which the plan counts in, each circuit may round half a one.
      expect(is).toBeGreaterThanOrEqual(made.value.bound - 0.01);
      expect(is).toBeLessThanOrEqual(made.value.bound * (1 + WORTH) + 0.01);
      expect(balance(then)).toEqual({ ok: false, error: { code: 'changes-nothing' } });
    }
  });
});
