import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import {
  current,
  type Draw,
  lineCurrent,
  neutralCurrent,
  type OfPhases,
  threePhaseCurrents,
} from '#engine/supply/current.ts';
import { CONTINUOUS_SHARE, dimmerNeutral, type LoadRules, ratingFor, usableAmps } from '#engine/supply/load-rules.ts';
import values from './check-values.json' with { type: 'json' };

// Values and where they are from: check-values.json. Mark R2: read in trade sources on the codes named; C: computed from textbook
// formulas. The other reckoning is of our own: currents as waves, sampled through one period.
const rows = (group: string) => Object.entries(values).filter(([, row]) => row.group === group);

const numbersIn = (text: string) => (text.match(/\d+(\.\d+)?/g) ?? []).map(Number);

const NOTHING: Draw = { watts: 0, powerFactor: 1 };

describe('current of one phase', () => {
  it.each(rows('amps'))('[SU2] value %s', (_n, { input, expected }) => {
    const [watts = 0, volts = 0, powerFactor = 0] = numbersIn(input);
    expect(`${current({ watts, powerFactor }, volts).toFixed(3)} A`).toBe(expected);
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
  });

  it.each(rows('triplen'))('[SU4] value %s', (_n, { input, expected }) => {
    const [, third = 0] = /(\d+) %/.exec(input) ?? [];
    const neutral = neutralCurrent([10, 10, 10], Number(third) / 100);
    expect(`I_N / I_phase rms = ${(neutral / 10).toFixed(3)}`).toBe(expected);
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
  });
});

it('has rows of each kind', () => {
  const groups = ['amps', 'amps-3ph', 'neutral', 'triplen', '80pct', 'neutral-130'];
  expect(groups.map((group) => rows(group).length)).toEqual([7, 4, 6, 3, 2, 1]);
});

const THIRD = (2 * Math.PI) / 3;

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
