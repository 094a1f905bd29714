import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import type { ChannelFunction, FixtureType, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { GENERIC_TYPES } from './generic-types.ts';
import { typeTroubles } from './type-troubles.ts';
import { defaultOf, functionSpans, rangeSpans } from './value-spans.ts';

const rgb = present(
  GENERIC_TYPES.find((type) => type.model === 'RGB'),
  'no RGB',
);
const colours = present(rgb.modes[0], 'no mode');
const red = present(colours.channels[0], 'no channel');

const withMode = (mode: Partial<TypeMode>): FixtureType => ({ ...rgb, modes: [{ ...colours, name: 'M', ...mode }] });
const withFunctions = (functions: readonly ChannelFunction[]): FixtureType =>
  withMode({ channels: [{ ...red, uses: red.uses.map((use) => ({ ...use, functions })) }] });
const kinds = (type: FixtureType) => typeTroubles(type).map((trouble) => trouble.kind);

const stretch = (name: string, from: number, ranges: readonly (readonly [string, number])[] = []): ChannelFunction => ({
  name,
  attribute: 'Shutter1',
  from,
  default: from,
  physical: null,
  when: null,
  ranges: ranges.map(([range, start]) => ({ name: range, from: start, physical: null })),
});

describe('typeTroubles', () => {
  it('[FT5] a mode without slots, and one with virtual channels only', () => {
    expect(kinds(withMode({ channels: [] }))).toEqual(['no-slots']);
    const virtual = colours.channels.map((channel) => ({ ...channel, offsets: [] }));
    expect(typeTroubles(withMode({ channels: virtual }))).toEqual([{ kind: 'only-virtual', mode: 'M', channels: 3 }]);
  });

  it('[FT5] a run of slots that the same channels take is one trouble', () => {
    const wide: TypeChannel = {
      ...red,
      offsets: [2, 3],
      resolution: 2,
      uses: [{ ...present(red.uses[0], 'no use'), attribute: 'Pan' }],
    };
    expect(typeTroubles(withMode({ channels: [wide, { ...wide, part: 'Body', uses: red.uses }] }))).toEqual([
      { kind: 'slot-taken-twice', mode: 'M', break: 1, first: 2, last: 3, channels: ['Body_Pan', 'Body_ColorAdd_R'] },
    ]);
  });

  it('[FT5] slots past 512, a fifth break, a part the mode does not have, names twice', () => {
    expect(typeTroubles(withMode({ channels: [{ ...red, offsets: [513] }] }))).toEqual([
      { kind: 'past-512', mode: 'M', break: 1, last: 513 },
    ]);
    expect(kinds(withMode({ channels: [{ ...red, break: 5 }] }))).toEqual(['break-beyond']);
    expect(kinds(withMode({ channels: [red, { ...red, part: 'Elsewhere' }] }))).toEqual(['unreached']);
    expect(kinds(withMode({ channels: [red, { ...red, offsets: [2] }] }))).toEqual(['channel-named-twice']);
    expect(kinds({ ...rgb, modes: [colours, colours] })).toEqual(['mode-named-twice']);
  });

  it('[FT5] values that overlap, leave a gap, or belong elsewhere', () => {
    expect(typeTroubles(withFunctions([stretch('Closed', 8), stretch('Open', 8)]))).toEqual([
      { kind: 'values-overlap', mode: 'M', channel: 'Body_ColorAdd_R', function: null, at: 8 },
      { kind: 'values-gap', mode: 'M', channel: 'Body_ColorAdd_R', function: null, from: 0, to: 7 },
    ]);
    expect(
      kinds(
        withFunctions([
          stretch('Closed', 0, [
            ['a', 0],
            ['b', 12],
          ]),
          stretch('Open', 10),
        ]),
      ),
    ).toEqual(['range-outside']);
    expect(
      kinds(
        withFunctions([
          stretch('Closed', 0, [
            ['a', 3],
            ['b', 3],
          ]),
        ]),
      ),
    ).toEqual(['values-overlap', 'values-gap']);
  });
});

describe('values', () => {
  it('[FT6] a function ends before the next of its condition, wherever it stands in the list', () => {
    const when = { part: 'Body', attribute: 'ColorAdd_G', within: null, from: 0, to: 9 };
    const functions = [stretch('C', 200), stretch('A', 0), { ...stretch('B', 100), when }, stretch('D', 50)];
    expect(functionSpans({ attribute: 'Shutter1', snap: 'No', master: 'None', functions }, 1)).toEqual([
      { from: 200, to: 255 },
      { from: 0, to: 49 },
      { from: 100, to: 255 },
      { from: 50, to: 199 },
    ]);
  });

  it('[FT6] a range ends before the next, or with its function', () => {
    const { ranges } = stretch('A', 0, [
      ['x', 0],
      ['', 10],
      ['y', 20],
    ]);
    expect(rangeSpans(ranges, 49)).toEqual([
      { from: 0, to: 9 },
      { from: 10, to: 19 },
      { from: 20, to: 49 },
    ]);
  });

  it('[FT7] a channel stands at the default of the function it begins in', () => {
    const [use] = red.uses;
    const channel = { ...red, uses: [{ ...present(use, 'no use'), functions: [stretch('A', 0), stretch('B', 7)] }] };
    expect(defaultOf(channel)).toBe(0);
    expect(defaultOf({ ...channel, initial: { attribute: 'ColorAdd_R', name: 'B' } })).toBe(7);
    expect(defaultOf({ ...channel, uses: [] })).toBe(0);
  });
});
