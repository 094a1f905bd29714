import Complex from 'complex.js';
import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { SETUP_KEY } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Rig } from '#engine/model/rig.ts';
import { circuitLoads } from '#engine/supply/circuit-loads.ts';
import {
  current,
  type Draw,
  lineCurrent,
  neutralCurrent,
  type OfPhases,
  threePhaseCurrents,
} from '#engine/supply/current.ts';
import { CONTINUOUS_SHARE, dimmerNeutral, type LoadRules, ratingFor, usableAmps } from '#engine/supply/load-rules.ts';
import { supplyLoads } from '#engine/supply/supply-loads.ts';
import { statedRig } from '#tests/support/stated-rig.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R2: read in trade sources on the codes named; C: computed from textbook
// formulas. Amps, phases and neutral are reckoned a second time with complex.js, a general-purpose library of complex numbers, as volt-amperes
// by complex voltages; and a third time as waves, sampled through one period.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

const numbersIn = (text: string) => (text.match(/\d+(\.\d+)?/g) ?? []).map(Number);

const NOTHING: Draw = { watts: 0, powerFactor: 1 };

describe('current of one phase', () => {
  it.each(rows('amps'))('[SU2] value %s', (_n, { input, expected }) => {
    const [watts = 0, volts = 0, powerFactor = 0] = numbersIn(input);
    expect(`${current({ watts, powerFactor }, volts).toFixed(3)} A`).toBe(expected);
    expect(`${complexCurrent(watts, powerFactor, new Complex(volts, 0)).abs().toFixed(3)} A`).toBe(expected);
    // The same as a rig says it, of one unit of such a type.
    const rig = feed([['C1', watts, powerFactor]], setCard('setup', SETUP_KEY, { volts }));
    expect(`${circuitLoads(rig)[0]?.amps.toFixed(3)} A`).toBe(expected);
  });
});

describe('line current of three phases', () => {
  it.each(rows('amps-3ph'))('[SU2] [SU3] value %s', (_n, { input, expected }) => {
    const [watts = 0, volts = 0, powerFactor = 0] = numbersIn(input);
    const amps = lineCurrent({ watts, powerFactor }, volts);
    expect(`${amps.toFixed(2)} A per line`).toBe(expected);
    // The same power as three draws, in star and in delta.
    const third = { watts: watts / 3, powerFactor };
    const star = { toNeutral: [third, third, third], betweenLines: [NOTHING, NOTHING, NOTHING] } as const;
    const delta = { toNeutral: [NOTHING, NOTHING, NOTHING], betweenLines: [third, third, third] } as const;
    for (const load of [star, delta]) {
      const { lines, neutral } = threePhaseCurrents(load, volts / Math.sqrt(3));
      for (const line of lines) expect(line).toBeCloseTo(amps, 9);
      expect(neutral).toBeCloseTo(0, 9);
    }
    for (const line of complexLines([watts / 3, watts / 3, watts / 3], [0, 0, 0], powerFactor, volts / Math.sqrt(3))) {
      expect(`${line.abs().toFixed(2)} A per line`).toBe(expected);
    }
    for (const line of complexLines([0, 0, 0], [watts / 3, watts / 3, watts / 3], powerFactor, volts / Math.sqrt(3))) {
      expect(`${line.abs().toFixed(2)} A per line`).toBe(expected);
    }
    for (const phases of [STAR, DELTA]) {
      const rig = threePhaseRig(
        phases.map((phase, at) => [`C${at}`, watts / 3, powerFactor, phase] as const),
        volts / Math.sqrt(3),
      );
      for (const line of supplyLoads(rig, circuitLoads(rig))[0]?.lines ?? []) {
        expect(`${line.toFixed(2)} A per line`).toBe(expected);
      }
    }
  });

  it('[SU11] a supply of circuits on its lines and between them, of one power factor, agrees with complex.js', () => {
    const rng = seededRng(37);
    for (let round = 0; round < 200; round++) {
      const powerFactor = (50 + rng.int(51)) / 100;
      const volts = rng.pick([120, 230]);
      const watts = [...STAR, ...DELTA].map(() => rng.int(4000) + 1);
      const rig = threePhaseRig(
        [...STAR, ...DELTA].map((phase, at) => [`C${at}`, watts[at] ?? 0, powerFactor, phase] as const),
        volts,
      );
      const [load] = supplyLoads(rig, circuitLoads(rig));
      const wanted = complexLines(watts.slice(0, 3), watts.slice(3), powerFactor, volts).map((line) => line.abs());
      for (const [at, line] of (load?.lines ?? []).entries()) expect(line).toBeCloseTo(wanted[at] ?? -1, 5);
      const neutral = sumOf(starCurrents(watts.slice(0, 3), powerFactor, volts));
      expect(load?.neutral).toBeCloseTo(neutral.abs(), 5);
    }
  });

  it('[SU11] of unlike power factors, circuits of one line are never reckoned for less than complex.js finds', () => {
    const rng = seededRng(41);
    for (let round = 0; round < 200; round++) {
      const units = [...STAR, ...STAR].map(
        (phase, at) => [`C${at}`, rng.int(4000) + 1, (50 + rng.int(51)) / 100, phase] as const,
      );
      const rig = threePhaseRig(units, 230);
      const [load] = supplyLoads(rig, circuitLoads(rig));
      for (const [at, line] of (load?.lines ?? []).entries()) {
        const on = units.filter(([, , , phase]) => phase === STAR[at]);
        const found = sumOf(on.map(([, watts, factor]) => complexCurrent(watts, factor, lineVoltage(at, 230))));
        expect(line).toBeGreaterThanOrEqual(found.abs() - 1e-6);
      }
    }
  });

  it('[SU3] agrees with waves sampled through a period, whatever hangs on it', () => {
    const rng = seededRng(17);
    const draw = (): Draw => ({ watts: rng.int(6000), powerFactor: (30 + rng.int(71)) / 100 });
    const three = (): OfPhases<Draw> => [draw(), draw(), draw()];
    for (let round = 0; round < 200; round++) {
      const load = { toNeutral: three(), betweenLines: three() };
      const volts = rng.pick([120, 230]);
      const { lines, neutral } = threePhaseCurrents(load, volts);
      const waves = wavesOf(load, volts);
      for (const [at, line] of lines.entries()) expect(line).toBeCloseTo(rms(waves.lines[at] ?? (() => 0)), 6);
      expect(neutral).toBeCloseTo(rms(waves.neutral), 6);
    }
  });
});

describe('current of the neutral', () => {
  it.each(rows('neutral'))('[SU4] value %s', (_n, { input, expected }) => {
    const [a = 0, b = 0, c = 0] = numbersIn(input);
    expect(`${neutralCurrent([a, b, c], 0).toFixed(3)} A`).toBe(expected);
    const whole = sumOf([a, b, c].map((amps, at) => lineVoltage(at, amps)));
    expect(`${whole.abs().toFixed(3)} A`).toBe(expected);
    const rig = threePhaseRig(
      [a, b, c].map((amps, at) => [`C${at}`, amps * 230, 1, STAR[at] ?? '1'] as const),
      230,
    );
    expect(`${supplyLoads(rig, circuitLoads(rig))[0]?.neutral.toFixed(3)} A`).toBe(expected);
  });

  it.each(rows('triplen'))('[SU4] value %s', (_n, { input, expected }) => {
    const [, third = 0] = /(\d+) %/.exec(input) ?? [];
    const neutral = neutralCurrent([10, 10, 10], Number(third) / 100);
    expect(`I_N / I_phase rms = ${(neutral / 10).toFixed(3)}`).toBe(expected);
    // Of a third harmonic a third of a period of the fundamental is a whole one: those of the three phases add up.
    const fundamental = 10 / new Complex(1, Number(third) / 100).abs();
    const harmonic = sumOf([0, 1, 2].map((at) => turned((fundamental * Number(third)) / 100, 3 * at * THIRD)));
    const linear = sumOf([0, 1, 2].map((at) => lineVoltage(at, fundamental)));
    expect(neutral).toBeCloseTo(new Complex(linear.abs(), harmonic.abs()).abs(), 9);
    const rig = threePhaseRig(
      STAR.map((phase, at) => [`C${at}`, 2300, 1, phase] as const),
      230,
      { third: Number(third) / 100 },
    );
    expect(supplyLoads(rig, circuitLoads(rig))[0]?.neutral).toBeCloseTo(neutral, 6);
  });

  it('[SU4] agrees with waves sampled through a period, of unlike phases and with a third harmonic', () => {
    const rng = seededRng(19);
    for (let round = 0; round < 200; round++) {
      const phases: OfPhases<number> = [rng.int(64), rng.int(64), rng.int(64)];
      const third = rng.int(100) / 100;
      const waves = phases.map((amps, at) => (angle: number) => {
        const own = angle - at * THIRD;
        const fundamental = amps / Math.sqrt(1 + third * third);
        return Math.SQRT2 * fundamental * (Math.cos(own) + third * Math.cos(3 * own));
      });
      for (const [at, amps] of phases.entries()) expect(rms(waves[at] ?? (() => 0))).toBeCloseTo(amps, 6);
      const neutral = (angle: number) => waves.reduce((sum, wave) => sum + wave(angle), 0);
      expect(neutralCurrent(phases, third)).toBeCloseTo(rms(neutral), 6);
    }
  });

  it('[SU5] value 150: what the neutral of a feeder to dimmers is made for', () => {
    const [phase = 0] = numbersIn(values['150'].input);
    expect(`${dimmerNeutral(phase)} A neutral`).toBe(values['150'].expected);
  });
});

describe('a share for continuous loads', () => {
  const rules: LoadRules = { volts: 120, share: CONTINUOUS_SHARE };

  it('[SU5] value 148: what a breaker carries for hours', () => {
    const [rating = 0, volts = 0] = numbersIn(values['148'].input);
    const amps = usableAmps(rating, { ...rules, volts });
    expect(`${amps} A, ${amps * volts} W`).toBe(values['148'].expected);
    expect(usableAmps(rating, { volts, share: null })).toBe(rating);
  });

  it('[SU5] value 149: what rating loads ask for', () => {
    const [continuous = 0, other = 0] = numbersIn(values['149'].input);
    const [asked = 0, next = 0] = numbersIn(values['149'].expected);
    expect(ratingFor(continuous, other, rules)).toBe(asked);
    // Ratings of branch circuits that the sources name.
    expect([15, 20].find((rating) => rating >= ratingFor(continuous, other, rules))).toBe(next);
    // All of 16 A for hours asks for 20 A; a breaker of 18.5 A then carries 14.8 A.
    const rig = feed(
      [['C1', 16 * 120, 1]],
      [
        ...setCard('setup', SETUP_KEY, { volts: 120, share: CONTINUOUS_SHARE }),
        ...setCard('circuit', 'c1', { name: 'C1', rating: asked }),
      ],
    );
    expect(circuitLoads(rig)[0]).toMatchObject({ amps: 16, asks: 20, usable: asked * 0.8 });
  });
});

it('has rows of each kind', () => {
  const groups = ['amps', 'amps-3ph', 'neutral', 'triplen', '80pct', 'neutral-130'];
  expect(groups.map((group) => rows(group).length)).toEqual([7, 4, 6, 3, 2, 1]);
});

const THIRD = (2 * Math.PI) / 3;

const STAR = ['1', '2', '3'] as const;
const DELTA = ['1-2', '2-3', '3-1'] as const;

const turned = (size: number, by: number) => new Complex({ abs: size, arg: -by });
const lineVoltage = (line: number, size: number) => turned(size, (line % 3) * THIRD);
const sumOf = (parts: readonly Complex[]) => parts.reduce((sum, part) => sum.add(part), new Complex(0, 0));

/** S = V I*: the current of a load that lags, from its complex power and voltage. */
function complexCurrent(watts: number, powerFactor: number, voltage: Complex): Complex {
  const power = new Complex({ abs: watts / powerFactor, arg: Math.acos(powerFactor) });
  return power.div(voltage).conjugate();
}

const starCurrents = (watts: readonly number[], powerFactor: number, volts: number) =>
  watts.map((each, line) => complexCurrent(each, powerFactor, lineVoltage(line, volts)));

/** The lines' currents of draws between line and neutral and between lines, by complex voltages. */
function complexLines(
  star: readonly number[],
  delta: readonly number[],
  powerFactor: number,
  volts: number,
): readonly Complex[] {
  const between = delta.map((watts, at) =>
    complexCurrent(watts, powerFactor, lineVoltage(at, volts).sub(lineVoltage(at + 1, volts))),
  );
  return starCurrents(star, powerFactor, volts).map((own, at) =>
    own.add(between[at] ?? 0).sub(between[(at + 2) % 3] ?? 0),
  );
}

type FedUnit = readonly [circuit: string, watts: number, powerFactor: number, phase?: string];

/** A rig of one unit on each circuit, of types whose manuals state this. */
function feed(units: readonly FedUnit[], cards: readonly Edit[]): Rig {
  const types = units.map(
    ([, power, powerFactor], at) => [`T${at}`, { power: power === 0 ? null : power, powerFactor }] as const,
  );
  return applyEdits(
    statedRig(
      units.map(([circuit], at) => ({ circuit, type: `T${at}` })),
      Object.fromEntries(types),
    ),
    cards,
  );
}

/** The same with circuits on a three-phase supply; `volts` between line and neutral. */
const threePhaseRig = (units: readonly FedUnit[], volts: number, cells: { readonly third?: number } = {}) =>
  feed(units, [
    ...setCard('supply', 'mains', { name: 'Mains', phases: '3', volts, ...cells }),
    ...units.flatMap(([name, , , phase]) =>
      setCard('circuit', name.toLowerCase(), { name, supply: 'Mains', phase: phase ?? null }),
    ),
  ]);

type Wave = (angle: number) => number;

/** The voltage of a line to neutral is a cosine, lines a third of a period apart; a current lags behind its own voltage. */
function wavesOf(load: Parameters<typeof threePhaseCurrents>[0], volts: number): { lines: Wave[]; neutral: Wave } {
  const star = load.toNeutral.map(
    (draw, at): Wave =>
      (angle) =>
        lagging(draw, volts, angle - at * THIRD),
  );
  const delta = load.betweenLines.map((draw, at): Wave => {
    // Found by looking for the peak of the difference of two lines, rather than known.
    const peak = peakOf((angle) => Math.cos(angle - at * THIRD) - Math.cos(angle - (at + 1) * THIRD));
    return (angle) => lagging(draw, volts * peak.height, angle - peak.at);
  });
  const neutral: Wave = (angle) => star.reduce((sum, wave) => sum + wave(angle), 0);
  const wave = (waves: readonly Wave[], at: number, angle: number) => waves[at % 3]?.(angle) ?? 0;
  const lines = [0, 1, 2].map(
    (at): Wave =>
      (angle) =>
        wave(star, at, angle) + wave(delta, at, angle) - wave(delta, at + 2, angle),
  );
  return { lines, neutral };
}

const lagging = ({ watts, powerFactor }: Draw, volts: number, angle: number) =>
  ((Math.SQRT2 * watts) / (volts * powerFactor)) * Math.cos(angle - Math.acos(powerFactor));

const STEPS = 720;
const ANGLES = Array.from({ length: STEPS }, (_, step) => (2 * Math.PI * step) / STEPS);

const rms = (wave: Wave) => Math.sqrt(ANGLES.reduce((sum, angle) => sum + wave(angle) ** 2, 0) / STEPS);

/** Of a wave whose peak lies at a whole step. */
function peakOf(wave: Wave): { readonly at: number; readonly height: number } {
  return ANGLES.map((at) => ({ at, height: wave(at) })).reduce((a, b) => (b.height > a.height ? b : a));
}
