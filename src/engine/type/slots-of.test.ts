import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { randomType } from '#tests/support/random-type.ts';
import type { FixtureType, Part, TypeChannel, TypeMode } from '../model/fixture-type.ts';
import { NO_HAZARDS, NO_SETTINGS, NOTHING_STATED } from '../model/fixture-type.ts';
import { GENERIC_TYPES } from './generic-types.ts';
import { footprintsOfMode, LAST_LAID_OUT, slotsOf } from './slots-of.ts';
import { typeTroubles } from './type-troubles.ts';

describe('slotsOf', () => {
  it('[FT2] lists every slot from 1 to the last one taken, and every byte of every cell exactly once', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const type = randomType(seededRng(seed));
      for (const mode of type.modes) {
        const { breaks } = slotsOf(type, mode);
        for (const { slots } of breaks) {
          expect(slots.map((slot) => slot.slot)).toEqual(slots.map((_, at) => at + 1));
          expect(slots.at(-1)?.uses.length, `seed ${seed}`).toBeGreaterThan(0);
        }
        const bytes = breaks.flatMap((each) =>
          each.slots.flatMap((slot) =>
            slot.uses.map((use) => `${each.break}:${slot.slot} ${use.channel.part} ${use.attribute} ${use.byte}`),
          ),
        );
        expect(bytes.sort(), `seed ${seed}`).toEqual(bytesByHand(type, mode).sort());
      }
    }
  });

  it('[FT2] depends neither on the order of channels nor on virtual ones', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const type = randomType(rng);
      for (const mode of type.modes) {
        const virtual = mode.channels.map((channel) => ({ ...channel, offsets: [] }));
        const other = { ...mode, channels: shuffled(rng, [...mode.channels, ...virtual]) };
        expect(footprintsOfMode(type, other)).toEqual(footprintsOfMode(type, mode));
      }
    }
  });

  it('[FT4] a cell two slots on has its slots two slots on', () => {
    expect(footprintsOfMode(...bar([1, 4, 7]))).toEqual([9]);
    expect(footprintsOfMode(...bar([3, 6, 9]))).toEqual([11]);
  });

  it('[FT4] copies that go round in circles, and copies of nothing, take no slots', () => {
    const [type, mode] = bar([1]);
    const loop: Part = { name: 'Loop', kind: 'part', within: 'Cell', copy: { of: 'Cell', starts: [] } };
    const lost: Part = { name: 'Lost', kind: 'part', within: 'Bar', copy: { of: 'Nowhere', starts: [] } };
    expect(footprintsOfMode({ ...type, parts: [...type.parts, loop, lost] }, mode)).toEqual([3]);
  });

  it('[FT4] copies of copies that ask for billions of cells are cut off', () => {
    const parts: Part[] = [{ name: '0', kind: 'part', within: null, copy: null }];
    for (let level = 1; level <= 12; level++) {
      parts.push({ name: `${level}`, kind: 'part', within: null, copy: null });
      for (let at = 0; at < 16; at++) {
        const copy = { of: `${level - 1}`, starts: [{ break: 1, slot: at + 1 }] };
        parts.push({ name: `${level} ${at}`, kind: 'part', within: `${level}`, copy });
      }
    }
    const [type, mode] = bar([1]);
    const channels = mode.channels.map((channel) => ({ ...channel, part: '0' }));
    expect(slotsOf({ ...type, parts }, { ...mode, root: '12', channels }).breaks[0]?.slots.length).toBeGreaterThan(0);
  });

  it('[FT3] names coarse and fine, the cell, and holes', () => {
    const [type, mode] = bar([1, 6]);
    const [cell] = mode.channels;
    const wide: TypeChannel = { ...(cell as TypeChannel), offsets: [1, 4], resolution: 2 };
    const { breaks } = slotsOf(type, { ...mode, channels: [wide] });
    const said = breaks[0]?.slots.map(({ uses }) => uses.map((use) => `${use.cell} ${use.byte + 1}/${use.of}`).join());
    expect(said).toEqual(['Cell 1 1/2', '', '', 'Cell 1 2/2', '', 'Cell 2 1/2', '', '', 'Cell 2 2/2']);
  });
});

describe('generic types', () => {
  it('[FT9] have nothing wrong with them, and every slot of them has one use', () => {
    for (const type of GENERIC_TYPES) {
      expect(typeTroubles(type), type.model).toEqual([]);
      for (const mode of type.modes) {
        const uses = slotsOf(type, mode).breaks.flatMap((each) => each.slots.map((slot) => slot.uses.length));
        expect(new Set(uses), type.model).toEqual(new Set([1]));
      }
    }
  });

  it('[FT9] take the slots their names promise', () => {
    const footprints = GENERIC_TYPES.map(
      (type) => `${type.model}: ${type.modes.map((mode) => footprintsOfMode(type, mode).join('+')).join(', ')}`,
    );
    expect(footprints).toEqual([
      'Dimmer: 1, 2',
      'Relay: 1',
      'RGB: 3, 4',
      'RGBW: 4, 5',
      'RGBA: 4, 5',
      'RGBAW: 5, 6',
      'RGBAW UV: 6, 7',
      'CMY: 3',
      'Tunable white: 2, 2',
      'Dimmer with scroller: 1+1',
      'RGB bar, 4 cells: 12, 13',
      'RGB bar, 8 cells: 24, 25',
      'Strobe: 2',
      'Fog machine: 1, 2',
      'Haze machine: 2',
    ]);
  });
});

/** A bar of RGB cells that start at the slots given. */
function bar(starts: readonly number[]): [FixtureType, TypeMode] {
  const parts: Part[] = [
    { name: 'Cell', kind: 'part', within: null, copy: null },
    { name: 'Bar', kind: 'part', within: null, copy: null },
    ...starts.map(
      (slot, at): Part => ({
        name: `Cell ${at + 1}`,
        kind: 'part',
        within: 'Bar',
        copy: { of: 'Cell', starts: [{ break: 1, slot }] },
      }),
    ),
  ];
  const channels = ['R', 'G', 'B'].map(
    (colour, at): TypeChannel => ({
      part: 'Cell',
      break: 'of-copy',
      offsets: [at + 1],
      resolution: 1,
      highlight: null,
      initial: null,
      uses: [{ attribute: `ColorAdd_${colour}`, snap: 'No', master: 'None', functions: [] }],
    }),
  );
  const mode: TypeMode = { name: 'Cells', description: '', root: 'Bar', channels, firmware: [] };
  const type: FixtureType = {
    maker: 'Corvid Stage',
    model: 'Bar',
    shortName: '',
    description: '',
    guid: '',
    parts,
    modes: [mode],
    physical: NOTHING_STATED,
    settings: NO_SETTINGS,
    hazards: NO_HAZARDS,
  };
  return [type, mode];
}

/** What the standard's text says, the long way round: by channel and by copy, for types whose copies hold no copies. */
function bytesByHand(type: FixtureType, mode: TypeMode): string[] {
  const topOf = (name: string): string => {
    const part = type.parts.find((each) => each.name === name);
    return part?.within == null ? name : topOf(part.within);
  };
  const copies = type.parts.filter((part) => part.copy !== null && topOf(part.name) === mode.root);
  return mode.channels.flatMap((channel) => {
    const top = topOf(channel.part);
    const inBody =
      top === mode.root ? [{ breakNumber: channel.break === 'of-copy' ? 1 : channel.break, start: 1 }] : [];
    const inCells = copies
      .filter((part) => part.copy?.of === top)
      .map((part) => {
        const starts = part.copy?.starts ?? [];
        const breakNumber = channel.break === 'of-copy' ? (starts.at(-1)?.break ?? 1) : channel.break;
        return { breakNumber, start: starts.findLast((each) => each.break === breakNumber)?.slot ?? 1 };
      });
    return [...inBody, ...inCells].flatMap(({ breakNumber, start }) =>
      channel.offsets
        .map((offset, byte) => ({ slot: start + offset - 1, byte }))
        .filter(({ slot }) => slot <= LAST_LAID_OUT)
        .map(({ slot, byte }) => `${breakNumber}:${slot} ${channel.part} ${channel.uses[0]?.attribute} ${byte}`),
    );
  });
}

function shuffled<T>(rng: Rng, items: readonly T[]): T[] {
  const left = [...items];
  return items.map(() => left.splice(rng.int(left.length), 1)[0] as T);
}
