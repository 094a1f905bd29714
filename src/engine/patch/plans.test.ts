import { describe, expect, it } from 'vitest';
import { countingIds } from '#base/random-id.ts';
import type { Result } from '#base/result.ts';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow, rowsOf, tableOf } from '#base/table.ts';
import { idsOf, randomRig } from '#tests/support/random-rig.ts';
import { addressOf, printFinding, printPlan, printRig, rigOf } from '#tests/support/rig-shorthand.ts';
import { slotRuns } from '../address/claim.ts';
import { createOccupancy } from '../address/occupancy-index.ts';
import { checkRig } from '../check/check-rig.ts';
import { createChecker } from '../check/checker.ts';
import { absolute } from '../model/address.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Plan } from '../model/edit.ts';
import type { Finding } from '../model/finding.ts';
import { type FixtureId, fixtureId } from '../model/ids.ts';
import type { Rig } from '../model/rig.ts';
import { clearClash } from './clear-clash.ts';
import { fillDownPlan, seriesPlan } from './fill-plans.ts';
import { freeRoom } from './free-room.ts';
import { movePlan } from './move-plan.ts';
import { placePlan } from './place-plan.ts';
import type { PlanRefusal } from './plan-refusal.ts';
import { previewPlan } from './preview-plan.ts';
import { renumberChannels, renumberUnits } from './renumber-plans.ts';
import { duplicatePlan, insertPlan, removePlan } from './row-plans.ts';
import { swapPlan } from './swap-plan.ts';
import { takeRoomPlan } from './take-room-plan.ts';

type Planned = Result<Plan, PlanRefusal>;

const ids = (text: string) => text.split(' ').map(fixtureId);
const shown = (plan: Planned) => (plan.ok ? printPlan(plan.value) : plan.error);
const after = (rig: Rig, plan: Planned) => (plan.ok ? printRig(applyEdits(rig, plan.value.edits)) : plan.error);
const isClash = ({ rule }: Finding) => rule === 'slots-claimed-twice' || rule === 'past-the-end';
const clashes = (rig: Rig) => checkRig(rig).filter(isClash).map(printFinding);
const shuffled = (rig: Rig): Rig => ({ ...rig, fixtures: tableOf([...rowsOf(rig.fixtures)].reverse()) });

/** A few fixtures of a rig, in random order. */
function someOf(rng: Rng, rig: Rig): FixtureId[] {
  const all = idsOf(rig);
  return Array.from({ length: 1 + rng.int(6) }, () => rng.pick(all));
}

/** The absolute slots a fixture claims. */
function slotsOf(rig: Rig, id: FixtureId): number[] {
  const fixture = getRow(rig.fixtures, id);
  if (fixture === undefined) return [];
  return slotRuns(rig, fixture).flatMap(({ universe, first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => absolute(universe, first + i)),
  );
}

describe('place', () => {
  const from = (text: string) => ({ from: addressOf(text), breaks: 'in-one-universe' as const });

  it('[PL1] goes on in order from the first free room, never across the end', () => {
    const rig = rigOf('2:1 Spot/16 x2\n- Spot/16 x3\n2:40 Dim/1\n2:57 Spot/440');
    expect(shown(placePlan(rig, { fixtures: ids('f4 f3 f5'), ...from('2:1') }))).toEqual([
      'f4 address 2:41',
      'f3 address 2:497',
      'f5 address 3:1',
    ]);
  });

  it('[PL1] counts what the chosen hold as free', () => {
    const rig = rigOf('1:1 Spot/16\n1:21 Spot/16');
    expect(shown(placePlan(rig, { fixtures: ids('f2 f1'), ...from('1:1') }))).toEqual([
      'f2 address 1:1',
      'f1 address 1:17',
    ]);
  });

  it('[PL1] keeps the breaks of a fixture in one universe, or not', () => {
    const rig = rigOf('1:1 Fill/500\n- Bar/10+10');
    const request = { fixtures: ids('f2'), from: addressOf('1:1') };
    expect(shown(placePlan(rig, { ...request, breaks: 'in-one-universe' }))).toEqual([
      'f2 address 2:1',
      'f2 address2 2:11',
    ]);
    expect(shown(placePlan(rig, { ...request, breaks: 'anywhere' }))).toEqual(['f2 address 1:501', 'f2 address2 2:1']);
  });

  it('[PL1] never overlaps, never crosses slot 512, is deterministic and does not depend on the order of rows', () => {
    for (let seed = 1; seed <= 250; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 30, universes: 2 });
      const breaks = rng.pick(['in-one-universe', 'anywhere'] as const);
      const request = { fixtures: someOf(rng, rig), from: absolute(1 + rng.int(3), 1 + rng.int(512)), breaks };
      const plan = placePlan(rig, request);
      expect(placePlan(shuffled(rig), request)).toEqual(plan);
      if (!plan.ok) {
        expect(['mode-unknown', 'too-wide', 'changes-nothing']).toContain(plan.error.code);
        continue;
      }
      const placed = applyEdits(rig, plan.value.edits);
      const moved = new Set(request.fixtures);
      const others = new Set(
        idsOf(rig)
          .filter((id) => !moved.has(id))
          .flatMap((id) => slotsOf(placed, id)),
      );
      const own = [...moved].flatMap((id) => slotsOf(placed, id));
      expect(
        own.some((slot) => others.has(slot) || slot < request.from),
        `seed ${seed}`,
      ).toBe(false);
      expect(new Set(own).size, `seed ${seed}`).toBe(own.length);
      const before = new Set(clashes(rig));
      const fresh = checkRig(placed)
        .filter(isClash)
        .filter(({ fixtures }) => fixtures.some((id) => moved.has(id)));
      expect(
        fresh.map(printFinding).filter((line) => !before.has(line)),
        `seed ${seed}`,
      ).toEqual([]);
    }
  });

  it('[PL1] refuses with a code', () => {
    const rig = rigOf('- Ghost/?\n- Wall/513\n- Spot/16\n- Bar/300+300');
    const place = (names: string, at = '1:1') => shown(placePlan(rig, { fixtures: ids(names), ...from(at) }));
    expect(place('f1')).toEqual({ code: 'mode-unknown', fixture: 'f1' });
    expect(place('f2')).toEqual({ code: 'too-wide', fixture: 'f2', slots: 513 });
    expect(place('f4')).toEqual({ code: 'too-wide', fixture: 'f4', slots: 600 });
    expect(place('f3', '63999:500')).toEqual({ code: 'no-room', fixture: 'f3', slots: 16 });
    expect(place('gone')).toEqual({ code: 'no-such-fixture', fixture: 'gone' });
    expect(shown(placePlan(rig, { fixtures: [], ...from('1:1') }))).toEqual({ code: 'nothing-chosen' });
  });
});

describe('move, swap and take room', () => {
  const rig = rigOf('1:1 Spot/16 x3\n2:1+3:1 Bar/4+8\n- Haze/2');

  it('[PL2] takes a room whole, or says what does not fit', () => {
    expect(shown(takeRoomPlan(rig, fixtureId('f4'), addressOf('5:501')))).toEqual([
      'f4 address 5:501',
      'f4 address2 5:505',
    ]);
    expect(shown(takeRoomPlan(rig, fixtureId('f4'), addressOf('5:502')))).toEqual({
      code: 'crosses-end',
      fixture: 'f4',
      over: 1,
    });
  });

  it('[PL3] keeps distances, by a number or to an address, and leaves the unpatched alone', () => {
    expect(shown(movePlan(rig, ids('f2 f4 f5'), { by: 100 }))).toEqual([
      'f2 address 1:117',
      'f4 address 2:101',
      'f4 address2 3:101',
    ]);
    expect(shown(movePlan(rig, ids('f2 f3'), { to: addressOf('4:1') }))).toEqual(['f2 address 4:1', 'f3 address 4:17']);
  });

  it('[PL3] by a number and back is nothing', () => {
    const rng = seededRng(9);
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomRig(seed, { fixtures: 20, universes: 3 });
      const chosen = someOf(rng, random);
      const there = movePlan(random, chosen, { by: 700 });
      if (!there.ok) continue;
      const moved = applyEdits(random, there.value.edits);
      const back = movePlan(moved, chosen, { by: -700 });
      const clean = back.ok ? applyEdits(moved, back.value.edits) : moved;
      for (const id of chosen)
        expect(getRow(clean.fixtures, id)?.addresses).toEqual(getRow(random.fixtures, id)?.addresses);
    }
  });

  it('[PL3] refuses an address that does not exist, and a selection without one', () => {
    expect(shown(movePlan(rig, ids('f1 f2'), { by: -1 }))).toEqual({
      code: 'out-of-range',
      fixture: 'f1',
      field: 'address',
      value: 0,
    });
    expect(shown(movePlan(rig, ids('f5'), { by: 1 }))).toEqual({ code: 'not-patched' });
    expect(shown(movePlan(rig, ids('f1'), { by: 0.5 }))).toEqual({ code: 'bad-number', value: 0.5 });
    expect(shown(movePlan(rig, ids('f1'), { by: 0 }))).toEqual({ code: 'changes-nothing' });
  });

  it('[PL4] swaps all breaks; twice is nothing', () => {
    const once = swapPlan(rig, fixtureId('f1'), fixtureId('f4'));
    expect(shown(once)).toEqual(['f1 address 2:1', 'f1 address2 3:1', 'f4 address 1:1', 'f4 address2 -']);
    const swapped = once.ok ? applyEdits(rig, once.value.edits) : rig;
    expect(after(swapped, swapPlan(swapped, fixtureId('f1'), fixtureId('f4')))).toEqual(printRig(rig));
    expect(shown(swapPlan(rig, fixtureId('f5'), fixtureId('f5')))).toEqual({ code: 'changes-nothing' });
  });
});

describe('numbers', () => {
  it('[PL5] numbers channels in the order chosen', () => {
    const rig = rigOf('1:1 Spot/16 x3 #1');
    expect(shown(renumberChannels(rig, { fixtures: ids('f3 f1 f2'), from: 101, step: 10 }))).toEqual([
      'f3 channel 101',
      'f1 channel 111',
      'f2 channel 121',
    ]);
    expect(shown(renumberChannels(rig, { fixtures: ids('f3 f1'), from: 1, step: -1 }))).toMatchObject({
      code: 'out-of-range',
      value: 0,
    });
    expect(shown(renumberChannels(rig, { fixtures: ids('f3'), from: 1.5, step: 1 }))).toEqual({
      code: 'bad-number',
      value: 1.5,
    });
  });

  it('[PL6] numbers units along each position in natural order', () => {
    const rig = rigOf('- S/1 @LX1.10\n- S/1 @LX1.4A\n- S/1 @LX2.7\n- S/1 @lx1.4\n- S/1 @LX1.2\n- S/1 @LX1.');
    expect(shown(renumberUnits(rig, { fixtures: ids('f1 f2 f3 f4 f5 f6'), from: 1, step: 1 }))).toEqual([
      'f5 unit 1',
      'f4 unit 2',
      'f2 unit 3',
      'f1 unit 4',
      'f6 unit 5',
      'f3 unit 1',
    ]);
  });
});

describe('fill', () => {
  it('[PL7] copies cells down', () => {
    const rig = rigOf('1:1 Spot/16 #1 @LX1.1\n- Wash/8 #2\n- Spot/16');
    expect(shown(fillDownPlan(rig, ids('f1 f2 f3'), ['type', 'mode']))).toEqual(['f2 type Spot', 'f2 mode 16']);
    expect(shown(fillDownPlan(rig, ids('f1'), ['type']))).toEqual({ code: 'changes-nothing' });
  });

  it('[PL8] goes on: channel, unit, address by footprint and into the next universe', () => {
    const rig = rigOf('1:480 Spot/16 #7 @LX1.4\n- Spot/16\n- Wash/8\n- Spot/16');
    expect(shown(seriesPlan(rig, ids('f1 f2 f3 f4'), ['channel', 'unit', 'address', 'position']))).toEqual([
      'f2 channel 8',
      'f3 channel 9',
      'f4 channel 10',
      'f2 unit 5',
      'f3 unit 6',
      'f4 unit 7',
      'f2 position LX1',
      'f3 position LX1',
      'f4 position LX1',
      'f2 address 1:496',
      'f3 address 2:1',
      'f4 address 2:9',
    ]);
  });

  it.each([
    ['4', '5'],
    ['09', '10'],
    ['L9', 'L10'],
    ['4A', '4B'],
    ['b', 'c'],
  ])('[PL8] after unit %s comes %s', (unit, next) => {
    const rig = rigOf(`- S/1 @X.${unit}\n- S/1 @X.`);
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['unit']))).toEqual([`f2 unit ${next}`]);
  });

  it('[PL8] lays several breaks end to end, one fixture after the other', () => {
    const rig = rigOf('1:500+1:504 Bar/4+5\n- Bar/4+5\n- Bar/4+5');
    expect(shown(seriesPlan(rig, ids('f1 f2 f3'), ['address', 'address2']))).toEqual([
      'f2 address 2:1',
      'f2 address2 2:5',
      'f3 address 2:10',
      'f3 address2 2:14',
    ]);
  });

  it('[PL8] makes no series of what starts none', () => {
    const rig = rigOf('- Spot/16 @X.left\n- Spot/16\n63999:500 Spot/13');
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['channel']))).toEqual({ code: 'no-series', field: 'channel' });
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['unit']))).toEqual({ code: 'no-series', field: 'unit' });
    expect(shown(seriesPlan(rig, ids('f1 f2'), ['address']))).toEqual({ code: 'no-series', field: 'address' });
    expect(shown(seriesPlan(rig, ids('f3 f1'), ['address']))).toMatchObject({ code: 'out-of-range', fixture: 'f1' });
  });

  it('[PL8] never overlaps within the series, never crosses slot 512', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 20, universes: 2 });
      const chosen = [...new Set(someOf(rng, rig))];
      const plan = seriesPlan(rig, chosen, ['address']);
      if (!plan.ok) continue;
      const filled = applyEdits(rig, plan.value.edits);
      const firstBreaks = chosen.flatMap((id) => {
        const fixture = getRow(filled.fixtures, id);
        return fixture === undefined
          ? []
          : slotRuns(filled, fixture)
              .filter(({ part }) => part === 1)
              .map((run) => ({ id, run }));
      });
      const slots = firstBreaks.flatMap(({ run }) =>
        Array.from({ length: run.last - run.first + 1 }, (_, i) => absolute(run.universe, run.first + i)),
      );
      expect(new Set(slots).size, `seed ${seed}`).toBe(slots.length);
      expect(
        firstBreaks.some(({ id, run }) => run.over > 0 && id !== chosen[0]),
        `seed ${seed}`,
      ).toBe(false);
    }
  });
});

describe('rows', () => {
  const order = (rig: Rig) => printRig(rig).map((line) => line.split(' ')[0]);

  it('[PL9] inserts below a row, above all, or at the end, and keeps the order of the others', () => {
    const rig = rigOf('- S/1 x3');
    const insert = (at: FixtureId | null, count: number) => {
      const plan = insertPlan(
        rig,
        { after: at, rows: Array.from({ length: count }, () => ({ type: 'S' })) },
        countingIds('n'),
      );
      return plan.ok ? order(applyEdits(rig, plan.value.edits)) : plan.error;
    };
    expect(insert(fixtureId('f1'), 2)).toEqual(['f1', 'n1', 'n2', 'f2', 'f3']);
    expect(insert(null, 1)).toEqual(['n1', 'f1', 'f2', 'f3']);
    expect(insert(fixtureId('f3'), 1)).toEqual(['f1', 'f2', 'f3', 'n1']);
    expect(insert(fixtureId('gone'), 1)).toEqual({ code: 'no-such-fixture', fixture: 'gone' });
    expect(insert(null, 5001)).toEqual({ code: 'bad-number', value: 5001 });
  });

  it('[PL9] keeps the order however often rows are put into the same gap, and among rows of one order', () => {
    let rig = randomRig(8, { fixtures: 40, universes: 2 });
    const makeId = countingIds('n');
    const rng = seededRng(8);
    for (let round = 0; round < 400; round++) {
      const before = order(rig);
      const at = round < 200 ? 0 : rng.int(before.length);
      const count = 1 + rng.int(3);
      const rows = Array.from({ length: count }, () => ({}));
      const plan = insertPlan(rig, { after: before[at] as FixtureId, rows }, makeId);
      if (!plan.ok) throw new Error(plan.error.code);
      rig = applyEdits(rig, plan.value.edits);
      const now = order(rig);
      expect(now.filter((id) => before.includes(id))).toEqual(before);
      expect(now.indexOf(before[at]) + count + 1).toBe(
        before[at + 1] === undefined ? now.length : now.indexOf(before[at + 1]),
      );
    }
  });

  it('[PL10] removes rows', () => {
    const rig = rigOf('- S/1 x3');
    expect(after(rig, removePlan(rig, ids('f2 f3')))).toEqual(['f1 - S/1']);
  });

  it('[PL11] duplicates with the next number at the end of a position, else a suffix', () => {
    const rig = rigOf('1:1 Spot/16 #1 @LX1.4\n1:17 Spot/16 #2 @LX1.5\n1:33 Spot/16 #3 @LX1.4A');
    const copies = (names: string, count: number) => {
      const plan = duplicatePlan(rig, { fixtures: ids(names), copies: count, addresses: 'none' }, countingIds('n'));
      return plan.ok ? printRig(applyEdits(rig, plan.value.edits)).filter((line) => line.startsWith('n')) : plan.error;
    };
    expect(copies('f1', 2)).toEqual(['n1 - Spot/16 @LX1.4B', 'n2 - Spot/16 @LX1.4C']);
    expect(copies('f2', 2)).toEqual(['n1 - Spot/16 @LX1.6', 'n2 - Spot/16 @LX1.7']);
    expect(copies('f1', 0)).toEqual({ code: 'bad-number', value: 0 });
  });

  it('[PL11] places copies when asked to', () => {
    const rig = rigOf('1:1 Spot/16 x3 @LX1.1\n1:480 Fill/20');
    const plan = duplicatePlan(rig, { fixtures: ids('f2'), copies: 2, addresses: 'next-free' }, countingIds('n'));
    const lines = plan.ok ? printRig(applyEdits(rig, plan.value.edits)) : [];
    expect(lines.filter((line) => line.startsWith('n'))).toEqual([
      'n1 1:49 Spot/16 @LX1.2A',
      'n2 1:65 Spot/16 @LX1.2B',
    ]);
  });
});

describe('copies with addresses', () => {
  it('[PL11] keep breaks apart that lie in two universes, and never overlap', () => {
    const rig = rigOf('1:1+2:1 Bar/4+8 @X.1\n1:20 Dim/1');
    const request = { fixtures: ids('f1'), copies: 2, addresses: 'next-free' } as const;
    const plan = duplicatePlan(rig, request, countingIds('n'));
    const copied = plan.ok ? applyEdits(rig, plan.value.edits) : rig;
    expect(printRig(copied).filter((line) => line.startsWith('n'))).toEqual([
      'n1 1:5+2:9 Bar/4+8 @X.2',
      'n2 1:9+2:17 Bar/4+8 @X.3',
    ]);
    expect(clashes(copied)).toEqual([]);
  });
});

describe('free room', () => {
  it('[PL12] names the nearest in the universe, then the next universes', () => {
    const rig = rigOf('1:354 Spot/27\n1:374 Spot/27\n1:1 Fill/300\n1:428 Fill2/85\n2:1 Spot/27');
    const question = { footprints: [27], near: addressOf('1:374'), moving: ids('f2'), most: 3 };
    const starts = freeRoom(createOccupancy(rig), question).map((start) => start);
    expect(starts).toEqual([addressOf('1:381'), addressOf('1:327'), addressOf('2:28')]);
  });

  it('[PL12] always has room for what it names', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const rng = seededRng(seed);
      const rig = randomRig(seed, { fixtures: 25, universes: 2 });
      const index = createOccupancy(rig);
      const [moving] = someOf(rng, rig);
      const footprints = rng.pick([[16], [10, 20], [1], [300]]);
      const starts = freeRoom(index, {
        footprints,
        near: absolute(1 + rng.int(2), 1 + rng.int(512)),
        moving: moving ? [moving] : [],
        most: 4,
      });
      expect(starts.length).toBe(4);
      const length = footprints.reduce((a, b) => a + b, 0);
      const taken = new Set(
        idsOf(rig)
          .filter((id) => id !== moving)
          .flatMap((id) => slotsOf(rig, id)),
      );
      for (const start of starts) {
        expect(((start - 1) % 512) + length).toBeLessThanOrEqual(512);
        for (let slot: number = start; slot < start + length; slot++)
          expect(taken.has(slot), `seed ${seed}`).toBe(false);
      }
    }
  });

  it('[PL12] names nothing for what fits into no universe', () => {
    expect(
      freeRoom(createOccupancy(rigOf('')), { footprints: [400, 113], near: addressOf('1:1'), moving: [], most: 3 }),
    ).toEqual([]);
  });
});

describe('clear clash', () => {
  const cleared = (rig: Rig, line: string) => {
    const finding = checkRig(rig).find((each) => printFinding(each) === line);
    if (finding === undefined) throw new Error(`no ${line} among ${checkRig(rig).map(printFinding).join('; ')}`);
    return shown(clearClash(rig, finding));
  };

  it('[PL14] moves one of two, the later, to the nearest room', () => {
    const rig = rigOf('1:354 Spot/27 #1\n1:374 Spot/27 #2\n1:408 Spot/27 #3\n1:1 Fill/353');
    expect(cleared(rig, 'blocker slots-claimed-twice 1:374-380 f1 f2')).toEqual(['f2 address 1:381']);
  });

  it('[PL14] moves to the next universe with room when its own is full', () => {
    const rig = rigOf('1:1 Fill/485\n1:486 Spot/27 #1\n1:487 Spot/26 #2\n2:1 Full/510\n3:1 Spot/16 #9');
    expect(cleared(rig, 'blocker slots-claimed-twice 1:487-512 f2 f3')).toEqual(['f3 address 3:17']);
  });

  it('[PL14] moves one unit rather than two that act as one, and those two together when they must go', () => {
    const pair = rigOf('1:1 Spot/16 #5\n1:1 Spot/16 #5\n1:10 Spot/16 #6');
    expect(cleared(pair, 'blocker slots-claimed-twice 1:10-16 f1 f2 f3')).toEqual(['f3 address 1:17']);
    const against = rigOf('1:1 Spot/16 #5\n1:1 Spot/16 #5\n1:10 Ghost/? #6');
    expect(cleared(against, 'blocker slots-claimed-twice 1:10-10 f1 f2 f3')).toEqual([
      'f1 address 1:11',
      'f2 address 1:11',
    ]);
  });

  it('[PL14] moves the one in the most trouble: it clears the rest as well', () => {
    const rig = rigOf('3:500 Batten/48 #186\n3:499 Profile/6 #213\n3:505 Profile/6 #215\n3:1 Fill/200');
    expect(cleared(rig, 'blocker slots-claimed-twice 3:500-504 f1 f2')).toEqual(['f1 address 3:451']);
  });

  it('[PL14] moves the later break of a fixture that clashes with itself', () => {
    expect(cleared(rigOf('1:1+1:6 Bar/10+10'), 'blocker slots-claimed-twice 1:6-10 f1')).toEqual(['f1 address2 1:11']);
  });

  it('[PL15] brings a break back from past the end, with those that act as one with it', () => {
    const rig = rigOf('3:500 Batten/48 #1\n3:500 Batten/48 #1\n3:400 Spot/100');
    expect(cleared(rig, 'blocker past-the-end 3:500-512 break 1 over 35 f1')).toEqual([
      'f1 address 3:352',
      'f2 address 3:352',
    ]);
  });

  it('[PL14] refuses what no move clears', () => {
    const rig = rigOf('1:1 Ghost/? #1\n1:1 Ghost/? #2\n- Spot/16 #3\n5:1 Wall/513 #4');
    expect(cleared(rig, 'caution unpatched f3')).toEqual({ code: 'not-a-clash', rule: 'unpatched' });
    expect(cleared(rig, 'blocker slots-claimed-twice 1:1-1 f1 f2')).toMatchObject({ code: 'mode-unknown' });
    expect(cleared(rig, 'blocker past-the-end 5:1-512 break 1 over 1 f4')).toMatchObject({
      code: 'too-wide',
      slots: 513,
    });
    const [stale] = checkRig(rigOf('1:1 Spot/16 x1\n1:2 Spot/16'));
    expect(stale && shown(clearClash(rigOf('1:1 Spot/16\n1:17 Spot/16'), stale))).toEqual({ code: 'finding-gone' });
    expect(stale && shown(clearClash(rigOf('1:1 Spot/16'), stale))).toEqual({ code: 'finding-gone' });
  });

  it('[PL14] [PL15] clears its clash, makes no new one, and does not depend on the order of rows', () => {
    let plans = 0;
    for (let seed = 1; seed <= 120; seed++) {
      const rig = randomRig(seed, { fixtures: 16, universes: 2 });
      const before = new Set(clashes(rig));
      for (const finding of checkRig(rig).filter(isClash)) {
        const plan = clearClash(rig, finding);
        expect(clearClash(shuffled(rig), finding)).toEqual(plan);
        if (!plan.ok) {
          expect(['mode-unknown', 'too-wide'], `seed ${seed}`).toContain(plan.error.code);
          continue;
        }
        plans += 1;
        const now = checkRig(applyEdits(rig, plan.value.edits)).filter(isClash);
        const label = `seed ${seed}: ${printFinding(finding)}: ${printPlan(plan.value).join(', ')}`;
        expect(
          now.some(({ key }) => key === finding.key),
          label,
        ).toBe(false);
        // What is left is what was there: the same slots and fixtures, or a part of them.
        for (const left of now)
          expect(before.has(printFinding(left)) || isPartOfSome(left, checkRig(rig)), label).toBe(true);
      }
    }
    expect(plans).toBeGreaterThan(500);
  });

  function isPartOfSome(left: Finding, findings: readonly Finding[]): boolean {
    if (!('run' in left)) return false;
    const slots = Array.from({ length: left.run.last - left.run.first + 1 }, (_, i) => left.run.first + i);
    return slots.every((slot) =>
      findings.some(
        (each) =>
          'run' in each &&
          each.run.universe === left.run.universe &&
          each.run.first <= slot &&
          slot <= each.run.last &&
          left.fixtures.every((id) => each.fixtures.includes(id)),
      ),
    );
  }
});

describe('preview', () => {
  it('[PL13] shows cells, rows and findings that come and go, with a checker or without', () => {
    const rig = rigOf('1:354 Spot/27 #1\n1:374 Spot/27 #2\n2:1 Spot/27 #3');
    const plan: Plan = {
      name: 'edit',
      edits: [
        { kind: 'set-cell', fixture: fixtureId('f2'), field: 'address', value: addressOf('2:10') },
        { kind: 'remove-fixture', fixture: fixtureId('f1') },
        { kind: 'add-fixture', fixture: fixtureId('n1'), cells: { type: 'Spot', mode: '27', address: 1 } },
      ],
    };
    const preview = previewPlan(rig, plan);
    expect(preview.changes).toEqual([
      { fixture: 'f2', field: 'address', from: addressOf('1:374'), to: addressOf('2:10') },
    ]);
    expect([preview.fixturesAdded, preview.fixturesRemoved]).toEqual([['n1'], ['f1']]);
    expect(preview.findingsRemoved.map(printFinding)).toEqual(['blocker slots-claimed-twice 1:374-380 f1 f2']);
    expect(preview.findingsAdded.map(printFinding)).toEqual(['blocker slots-claimed-twice 2:10-27 f2 f3']);
    const checker = createChecker(rig);
    expect(previewPlan(rig, plan, checker)).toEqual(preview);
    expect(checker.rig).toBe(rig);
    expect(checker.findings()).toEqual(checkRig(rig));
    expect(() => previewPlan(preview.rig, plan, checker)).toThrow('another rig');
  });
});
