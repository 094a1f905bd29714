import { describe, expect, it } from 'vitest';
import { getRow, rowsOf } from '#base/table.ts';
import { pinnedModeEdit } from '#tests/support/pinned-mode.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { addressOf } from '#tests/support/rig-shorthand.ts';
import { occupancyOf, universesInUse } from '../address/occupancy.ts';
import type { Universe } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import type { Cells, Fixture } from '../model/fixture.ts';
import {
  type FixtureType,
  NO_HAZARDS,
  NO_SETTINGS,
  NOTHING_STATED,
  type Resolution,
  type TypeChannel,
} from '../model/fixture-type.ts';
import { fixtureId, foldName } from '../model/ids.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { GENERIC_TYPES } from '../type/generic-types.ts';
import { slotsOf } from '../type/slots-of.ts';
import { type SlotUser, universeSlots } from './universe-slots.ts';

const slotsIn = (rig: Rig, universe: number) => universeSlots(rig, occupancyOf(rig, universe as Universe));

/** `f1.1/3 Pan fine Cell 1`: fixture, break and slot of it, what it does there; `hole`, `?` when nobody knows. */
function printUser({ fixture, part, own, uses }: SlotUser): string {
  const does = uses?.map((use) => `${use.attribute} ${use.byte} ${use.cell}`.trim()).sort();
  return `${fixture.id}.${part}/${own} ${does === undefined ? '?' : does.length === 0 ? 'hole' : does.join(' & ')}`;
}

/** The same, written again in the plainest way: every slot asks every break of every fixture. */
function naive(rig: Rig): (universe: number, slot: number) => string[] {
  const known = [...rowsOf(rig.fixtures)].map((fixture) => {
    const mode = [...rowsOf(rig.modes)].find(
      (each) => foldName(each.type) === foldName(fixture.type) && foldName(each.mode) === foldName(fixture.mode),
    );
    const [typeMode] = mode?.pin?.type.modes ?? [];
    const chart = mode?.pin && typeMode ? slotsOf(mode.pin.type, typeMode) : undefined;
    return { fixture, footprints: mode?.footprints ?? [1, 1, 1, 1], chart };
  });
  return (universe, slot) =>
    known.flatMap(({ fixture, footprints, chart }) =>
      footprints.flatMap((footprint, at) => {
        const start = fixture.addresses[at] ?? null;
        const own = (universe - 1) * 512 + slot - (start ?? Number.NaN) + 1;
        const inUniverse = start !== null && Math.ceil(start / 512) === universe;
        if (!inUniverse || !(own >= 1 && own <= footprint)) return [];
        const uses = chart?.breaks.find((each) => each.break === at + 1)?.slots[own - 1]?.uses;
        const does = uses?.map((use) => `${use.attribute} ${use.byte} ${use.cell}`.trim()).sort();
        return [`${fixture.id}.${at + 1}/${own} ${does === undefined ? '?' : does.join(' & ') || 'hole'}`];
      }),
    );
}

function naiveState(claimants: readonly Fixture[]): string {
  const [one] = claimants;
  if (one === undefined) return 'free';
  if (claimants.length === 1) return 'used';
  const facts = ({ channel, type, mode, addresses }: Fixture) =>
    JSON.stringify([channel, foldName(type), foldName(mode), addresses]);
  const alike = one.channel !== null && claimants.every((each) => facts(each) === facts(one));
  return alike && new Set(claimants).size === claimants.length ? 'acting-as-one' : 'claimed-twice';
}

describe('universeSlots', () => {
  it('[SL1] [SL2] [SL3] says of every slot in order what asking every fixture says', () => {
    const seen = new Set<string>();
    for (let seed = 1; seed <= 12; seed++) {
      const rig = randomRig(seed, { fixtures: 25, universes: 2 });
      const usersOf = naive(rig);
      for (const universe of [...universesInUse(rig), 9 as Universe]) {
        const slots = slotsIn(rig, universe);
        expect(slots.map(({ slot }) => slot)).toEqual(Array.from({ length: 512 }, (_, at) => at + 1));
        for (const { slot, state, users } of slots) {
          const said = users.map(printUser).sort();
          expect(said, `seed ${seed}, ${universe}:${slot}`).toEqual(usersOf(universe, slot).sort());
          expect(state).toBe(naiveState(users.map(({ fixture }) => fixture)));
          seen.add(state);
          for (const { uses } of users) seen.add(uses === null ? 'unknown' : 'known');
        }
      }
    }
    // The rigs have every state in them, or this would show nothing.
    expect([...seen].sort()).toEqual(['acting-as-one', 'claimed-twice', 'free', 'known', 'unknown', 'used']);
  });

  it('[SL1] counts each slot of each claim once for each claimant', () => {
    for (let seed = 20; seed <= 30; seed++) {
      const rig = randomRig(seed, { fixtures: 30, universes: 2 });
      for (const universe of universesInUse(rig)) {
        const asked = occupancyOf(rig, universe).seats.flatMap(({ fixture, part, first, last }) =>
          Array.from({ length: last - first + 1 }, (_, at) => `${first + at} ${fixture} ${part} ${at + 1}`),
        );
        const given = slotsIn(rig, universe).flatMap(({ slot, users }) =>
          users.map(({ fixture, part, own }) => `${slot} ${fixture.id} ${part} ${own}`),
        );
        expect(given.sort()).toEqual(asked.sort());
      }
    }
  });

  it('[SL2] names coarse and fine that are not adjacent, holes, breaks and cells, as counted by hand', () => {
    const rig = rigWith(
      [HEAD, 'Basic', generic('Dimmer with scroller'), 'Dimmer and scroller', generic('RGB bar, 4 cells'), 'Cells'],
      [
        { type: 'Head', mode: 'Basic', address: addressOf('1:10') },
        { type: 'Dimmer with scroller', mode: 'Dimmer and scroller', address: addressOf('1:1'), address2: 20 },
        { type: 'RGB bar, 4 cells', mode: 'Cells', address: addressOf('1:507') },
        { type: 'Ghost', mode: 'x', address: addressOf('1:12') },
      ],
    );
    const taken = slotsIn(rig, 1).filter(({ state }) => state !== 'free');
    expect(taken.map(({ slot, state, users }) => `${slot} ${state}: ${users.map(printUser).join(', ')}`)).toEqual([
      '1 used: f1.1/1 Dimmer 0',
      '10 used: f0.1/1 Pan 0',
      '11 used: f0.1/2 Tilt 0',
      '12 claimed-twice: f0.1/3 Pan 1, f3.1/1 ?',
      '13 used: f0.1/4 hole',
      '14 used: f0.1/5 Tilt 1',
      '15 used: f0.1/6 Shutter1 0',
      '20 used: f1.2/1 Color1 0',
      // The bar has 12 slots, and slot 512 is the last there is.
      '507 used: f2.1/1 ColorAdd_R 0 Body cell 1',
      '508 used: f2.1/2 ColorAdd_G 0 Body cell 1',
      '509 used: f2.1/3 ColorAdd_B 0 Body cell 1',
      '510 used: f2.1/4 ColorAdd_R 0 Body cell 2',
      '511 used: f2.1/5 ColorAdd_G 0 Body cell 2',
      '512 used: f2.1/6 ColorAdd_B 0 Body cell 2',
    ]);
    expect(slotsIn(rig, 2).every(({ state }) => state === 'free')).toBe(true);
  });

  it('[SL2] gives the values of each byte, and the name that the manual has for it', () => {
    const rig = rigWith([HEAD, 'Basic'], [{ type: 'head', mode: 'BASIC', address: 1 }]);
    const uses = slotsIn(rig, 1).flatMap(({ users }) => users.flatMap((user) => user.uses ?? []));
    expect(uses.map((use) => [use.attribute, use.byte, use.default, use.highlight, use.name])).toEqual([
      // 0x80ff: 128 and 255.
      ['Pan', 0, 128, null, ''],
      ['Tilt', 0, 128, null, 'Nod'],
      ['Pan', 1, 255, null, ''],
      ['Tilt', 1, 255, null, 'Nod'],
      ['Shutter1', 0, 0, 255, ''],
    ]);
  });

  it('[SL3] knows nothing of a mode whose copy is gone, or of slots its copy does not have', () => {
    const edit = pinnedModeEdit(HEAD, 'Basic');
    const cells = { type: 'Head', mode: 'Basic', address: 1 };
    const add: Edit = { kind: 'add-fixture', fixture: fixtureId('f0'), cells };
    const of = (mode: Edit) => slotsIn(applyEdits(EMPTY_RIG, [mode, add]), 1).flatMap(({ users }) => users);
    expect(of({ ...edit, pin: null }).every(({ uses }) => uses === null)).toBe(true);
    const longer = of({ ...edit, footprints: [8] }).map(({ uses }) => uses === null);
    expect(longer).toEqual([false, false, false, false, false, false, true, true]);
  });

  it('[SL1] calls units that act as one shared, and a fixture on itself claimed twice', () => {
    const bar = generic('Dimmer with scroller');
    const cells = { type: bar.model, mode: 'Dimmer and scroller', channel: 5, address: 1, address2: 2 };
    const rig = rigWith([bar, 'Dimmer and scroller'], [cells, cells, { ...cells, address: 9, address2: 9 }]);
    const slots = slotsIn(rig, 1);
    expect([1, 2, 3, 9].map((slot) => slots[slot - 1]?.state)).toEqual([
      'acting-as-one',
      'acting-as-one',
      'free',
      'claimed-twice',
    ]);
  });
});

function rigWith(modes: readonly (FixtureType | string)[], rows: readonly Cells[]): Rig {
  const edits = modes.flatMap((type, at): Edit[] =>
    typeof type === 'string' ? [] : [pinnedModeEdit(type, String(modes[at + 1]))],
  );
  const adds = rows.map((cells, at): Edit => ({ kind: 'add-fixture', fixture: fixtureId(`f${at}`), cells }));
  const rig = applyEdits(EMPTY_RIG, [...edits, ...adds]);
  for (const [at] of rows.entries()) if (getRow(rig.fixtures, `f${at}`) === undefined) throw new Error(`no f${at}`);
  return rig;
}

function generic(model: string): FixtureType {
  const type = GENERIC_TYPES.find((each) => each.model === model);
  if (type === undefined) throw new Error(`no generic type ${model}`);
  return type;
}

function channel(attribute: string, offsets: readonly number[], more: Partial<TypeChannel>, name: string): TypeChannel {
  const resolution = offsets.length as Resolution;
  const standing = more.highlight === undefined && resolution === 2 ? 0x80ff : 0;
  const one = { attribute, from: 0, default: standing, physical: null, when: null, ranges: [] };
  const functions = [{ ...one, name }];
  const uses = [{ attribute, snap: 'No', master: 'None', functions }] as const;
  return { part: 'Body', break: 1, offsets, resolution, highlight: null, initial: null, uses, ...more };
}

/** Pan on slots 1 and 3, tilt on 2 and 5, nothing on 4; a virtual channel takes no slot. */
const HEAD: FixtureType = {
  maker: 'Invented',
  model: 'Head',
  shortName: 'Head',
  description: '',
  guid: '',
  parts: [{ name: 'Body', kind: 'part', within: null, copy: null }],
  modes: [
    {
      name: 'Basic',
      description: '',
      root: 'Body',
      firmware: [],
      channels: [
        channel('Pan', [1, 3], {}, 'Pan 1'),
        channel('Tilt', [2, 5], {}, 'Nod'),
        channel('Shutter1', [6], { highlight: 255 }, 'Shutter1'),
        { ...channel('Dimmer', [], { highlight: null }, 'Virtual'), resolution: 1 },
      ],
    },
  ],
  physical: NOTHING_STATED,
  settings: NO_SETTINGS,
  hazards: { ...NO_HAZARDS, movingParts: true },
};
