import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { seededRng } from '#base/rng.ts';
import { randomType } from '#tests/support/random-type.ts';
import type { FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { GENERIC_TYPES } from './generic-types.ts';
import { footprintsOfMode } from './slots-of.ts';
import { modeChart } from './type-chart.ts';
import { typeTroubles } from './type-troubles.ts';
import { defaultOf } from './value-spans.ts';

describe('modeChart', () => {
  it('[FT10] has every slot of every break', () => {
    for (const { type, mode } of randomModes(200)) {
      const chart = modeChart(type, mode);
      for (const [at, footprint] of footprintsOfMode(type, mode).entries()) {
        const slots = chart.breaks.find((each) => each.break === at + 1)?.slots ?? [];
        expect(slots.map((each) => each.slot)).toEqual(Array.from({ length: footprint }, (_, i) => i + 1));
      }
    }
  });

  it('[FT10] splits a default over the bytes of its channel', () => {
    for (const { type, mode } of randomModes(200)) {
      const uses = modeChart(type, mode).breaks.flatMap((each) => each.slots.flatMap((slot) => slot.uses));
      for (const channel of mode.channels) {
        const own = uses.filter(
          (use) => use.part === channel.part && use.cell === '' && use.attribute === channel.uses[0]?.attribute,
        );
        if (own.length === 0 || own.length !== channel.offsets.length || own.some((use) => use.of !== own.length))
          continue;
        const value = own.reduce((sum, use) => sum + use.default * 256 ** (use.of - 1 - use.byte), 0);
        expect(value, channel.part).toBe(defaultOf(channel));
      }
    }
  });

  it('[FT10] names every value exactly once for each condition, when nothing is wrong with the type', () => {
    let seen = 0;
    for (const { type, mode } of randomModes(200)) {
      if (typeTroubles(type).some(({ kind }) => kind.startsWith('values') || kind === 'range-outside')) continue;
      for (const { ranges, rangeBytes } of coarseUses(type, mode)) {
        for (const [first, last] of runs(ranges)) {
          expect(first).toBe(0);
          expect(last).toBe(256 ** rangeBytes - 1);
          seen += 1;
        }
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  it('[FT10] counts ranges in steps of the coarse slot, unless one starts between two of them', () => {
    const said = (starts: readonly number[]) => {
      const [type, mode] = withRanges(starts);
      const use = present(coarseUses(type, mode)[0], 'no slot');
      return `${use.rangeBytes}: ${use.ranges.map(({ from, to, name }) => `${from}-${to} ${name}`.trim()).join(', ')}`;
    };
    expect(said([0, 32768])).toBe('1: 0-127 R0, 128-255 R1');
    expect(said([0, 100])).toBe('2: 0-99 R0, 100-65535 R1');
    expect(said([512])).toBe('1: 0-1, 2-255 R0');
    expect(said([])).toBe('1: 0-255 Dimmer 1');
  });

  it('[FT10] gives ranges to the coarse slot alone', () => {
    const [type, mode] = withRanges([0, 32768]);
    const slots = modeChart(type, mode).breaks[0]?.slots ?? [];
    expect(slots.map(({ uses }) => uses[0]?.ranges.length)).toEqual([2, 0]);
    expect(slots.map(({ uses }) => uses[0]?.highlight)).toEqual([255, 255]);
  });
});

function* randomModes(seeds: number): Generator<{ readonly type: FixtureType; readonly mode: TypeMode }> {
  for (let seed = 1; seed <= seeds; seed++) {
    const type = randomType(seededRng(seed));
    for (const mode of type.modes) yield { type, mode };
  }
}

const coarseUses = (type: FixtureType, mode: TypeMode) =>
  modeChart(type, mode)
    .breaks.flatMap((each) => each.slots.flatMap((slot) => slot.uses))
    .filter((use) => use.byte === 0);

type Ranges = ReturnType<typeof coarseUses>[number]['ranges'];

/** First and last value of each run of ranges of one condition; a run begins at 0 and goes on without a gap. */
function runs(ranges: Ranges): readonly (readonly [number, number])[] {
  const all: [number, number][] = [];
  const open = new Map<string, [number, number]>();
  for (const { from, to, when, function: name } of ranges) {
    const key = JSON.stringify(when);
    const run = open.get(key);
    if (run !== undefined && run[1] === from - 1) run[1] = to;
    else if (from === 0) open.set(key, present(all[all.push([from, to]) - 1], 'just pushed'));
    else throw new Error(`${name}: values between ${run?.[1]} and ${from} are in no range, or in two`);
  }
  return all;
}

/** The generic dimmer at 16 bit, with ranges R0, R1, … that start where said. */
function withRanges(starts: readonly number[]): [FixtureType, TypeMode] {
  const type = present(GENERIC_TYPES[0], 'no generic types');
  const mode = present(type.modes[1], 'no 16 bit mode');
  const ranges = starts.map((from, at) => ({ name: `R${at}`, from, physical: null }));
  const channels = mode.channels.map(
    (channel): TypeChannel => ({
      ...channel,
      uses: channel.uses.map((use) => ({ ...use, functions: use.functions.map((each) => ({ ...each, ranges })) })),
    }),
  );
  return [type, { ...mode, channels }];
}
