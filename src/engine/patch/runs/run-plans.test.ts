import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { describedRun, lineRig } from '#tests/support/line-rig.ts';
import { shuffled, someOf } from '#tests/support/planned.ts';
import { randomCardEdit } from '#tests/support/random-card.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../../model/apply-edits.ts';
import { nameKey } from '../../model/card.ts';
import { setCard } from '../../model/card-edits.ts';
import { fixtureId } from '../../model/ids.ts';
import { plantOf } from '../../model/plant.ts';
import type { Rig } from '../../model/rig.ts';
import { compareUnits, runChain, unitsByRun } from '../../network/runs/run-chain.ts';
import { moveOnRun, putOnRun, putSplitter, takeOffRun } from './chain-plans.ts';
import { addRun, addSplitter, removeRun, removeSplitter, renameRun } from './run-plans.ts';

type Planned = ReturnType<typeof putOnRun>;

const chain = (rig: Rig, run: string): string[] => runChain(rig, nameKey(run)).map(({ id }) => id);
const carried = (rig: Rig, plan: Planned): Rig => {
  if (!plan.ok && plan.error.code !== 'changes-nothing') throw new Error(JSON.stringify(plan.error));
  return plan.ok ? applyEdits(rig, plan.value.edits) : rig;
};
const ids = (text: string) => text.split(' ').map((id) => fixtureId(id));

/** A rig with units on two runs and splitters, places said or not. */
function randomLines(seed: number): { readonly rig: Rig; readonly rng: Rng } {
  const rng = seededRng(seed);
  const cards = Array.from({ length: 60 }, () => randomCardEdit(rng, ['run', 'splitter']));
  return { rig: applyEdits(randomRig(seed, { fixtures: 25, universes: 2 }), cards), rng };
}

/** What stands in `list` when `some` are taken out and put behind `behind`, else at the end. */
function put(list: readonly string[], some: readonly string[], behind: string | undefined): string[] {
  const stays = list.filter((id) => !some.includes(id));
  const kept = list.slice(0, behind === undefined ? list.length : list.indexOf(behind) + 1);
  const at = kept.filter((id) => !some.includes(id)).length;
  return [...stays.slice(0, at), ...some, ...stays.slice(at)];
}

describe('units on a run', () => {
  it('[RN12] stand together in the order asked for, where they were asked for, and nothing else is reordered', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { rig, rng } = randomLines(seed);
      const fixtures = [...new Set(someOf(rng, rig))];
      const before = chain(rig, 'front');
      const behind = rng.int(3) === 0 || before.length === 0 ? undefined : rng.pick(before);
      const plan = putOnRun(rig, { run: 'Front', fixtures, order: 'given', after: behind });
      const done = carried(rig, plan);
      expect(chain(done, 'front'), `seed ${seed}`).toEqual(put(before, fixtures, behind));
      expect(chain(done, 'back')).toEqual(chain(rig, 'back').filter((id) => !fixtures.some((each) => each === id)));
      expect(putOnRun(shuffled(rig), { run: 'Front', fixtures, order: 'given', after: behind })).toEqual(plan);
    }
  });

  it('[RN12] by position and number come so, whatever the order in which they were chosen', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const { rig, rng } = randomLines(seed);
      const fixtures = [...new Set(someOf(rng, rig))];
      const rows = [...rowsOf(rig.fixtures)].filter(({ id }) => fixtures.includes(id)).sort(compareUnits);
      const done = carried(rig, putOnRun(rig, { run: 'new', fixtures, order: 'place' }));
      expect(chain(done, 'new').filter((id) => fixtures.includes(fixtureId(id)))).toEqual(rows.map(({ id }) => id));
    }
  });

  it('[RN12] go on in whole numbers for ever, at one place and at another', () => {
    const rng = seededRng(3);
    let rig = lineRig(Array.from({ length: 40 }, (_, at) => ({ id: `u${at}` })));
    let want: string[] = [];
    for (let step = 0; step < 2000; step++) {
      const id = fixtureId(`u${rng.int(40)}`);
      const behind = step % 3 === 0 ? want.at(-1) : want[rng.int(2)];
      if (behind === id) continue;
      want = put(want, [id], behind);
      rig = carried(rig, putOnRun(rig, { run: 'A', fixtures: [id], order: 'given', after: behind }));
      expect(chain(rig, 'A')).toEqual(want);
    }
    for (const { along } of unitsByRun(rig.fixtures).get('a') ?? []) expect(Number.isInteger(along)).toBe(true);
  });

  it('[RN12] two people who put units into different stretches both get what they asked for', () => {
    const rig = carried(
      lineRig(['a', 'b', 'c', 'd', 'x', 'y'].map((id) => ({ id }))),
      putOnRun(lineRig(['a', 'b', 'c', 'd'].map((id) => ({ id }))), {
        run: 'A',
        fixtures: ids('a b c d'),
        order: 'given',
      }),
    );
    const mine = putOnRun(rig, { run: 'A', fixtures: ids('x'), order: 'given', after: 'a' });
    const theirs = putOnRun(rig, { run: 'A', fixtures: ids('y'), order: 'given', after: 'c' });
    for (const [one, other] of [
      [mine, theirs],
      [theirs, mine],
    ] as const) {
      const both = [...(one.ok ? one.value.edits : []), ...(other.ok ? other.value.edits : [])];
      expect(chain(applyEdits(rig, both), 'A')).toEqual(['a', 'x', 'b', 'c', 'y', 'd']);
    }
  });

  it('[RN12] leave the metres of another run there, and keep those that were said on none', () => {
    const rig = lineRig([
      { id: 'a', run: 'B', cable: 4 },
      { id: 'b', cable: 7 },
    ]);
    const done = carried(rig, putOnRun(rig, { run: 'A', fixtures: ids('a b'), order: 'given' }));
    expect(runChain(done, 'a').map((link) => link.kind === 'unit' && link.fixture.cable)).toEqual([null, 7]);
  });

  it('[RN13] move by one place, and back', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const { rig, rng } = randomLines(seed);
      const before = chain(rig, 'back');
      if (before.length < 2) continue;
      const at = rng.int(before.length - 1);
      const [first, second] = [before[at] ?? '', before[at + 1] ?? ''];
      const moved = carried(rig, moveOnRun(rig, { run: 'back', id: first, step: 1 }));
      expect(chain(moved, 'back')).toEqual([...before.slice(0, at), second, first, ...before.slice(at + 2)]);
      expect(chain(carried(moved, moveOnRun(moved, { run: 'back', id: first, step: -1 })), 'back')).toEqual(before);
      expect(moveOnRun(rig, { run: 'back', id: before[0] ?? '', step: -1 }).ok).toBe(false);
    }
  });

  it('[RN14] are on none when taken off', () => {
    const { rig } = randomLines(1);
    const [some = ''] = (unitsByRun(rig.fixtures).get('front') ?? []).map(({ id }) => id);
    const done = carried(rig, takeOffRun(rig, [fixtureId(some)]));
    expect(chain(done, 'front')).not.toContain(some);
    expect(takeOffRun(done, [fixtureId(some)])).toEqual({ ok: false, error: { code: 'changes-nothing' } });
  });
});

describe('runs and splitters', () => {
  const rig = applyEdits(
    lineRig([
      { id: 'a', run: 'foh' },
      { id: 'b', run: 'Wings' },
    ]),
    [
      ...describedRun('FOH', { from: 'cable 1', lead: 20 }),
      ...setCard('splitter', 's', { name: 'Split', run: 'FOH', along: 5, outputs: 4 }),
    ],
  );

  it('[RN16] are added once, and renamed with all that is on them', () => {
    expect(addRun(rig, ' foh ')).toEqual({ ok: false, error: { code: 'name-taken', name: 'foh' } });
    expect(addRun(rig, ' ').ok).toBe(false);
    expect(plantOf(carried(rig, addRun(rig, 'wings')).cards).runs.get('wings')?.name).toBe('wings');
    const renamed = carried(rig, renameRun(rig, 'foh', 'Front'));
    expect(chain(renamed, 'front')).toEqual(['a', 's']);
    expect(plantOf(renamed.cards).runs.get('front')).toMatchObject({ name: 'Front', lead: 20 });
    expect(plantOf(renamed.cards).runs.size).toBe(1);
    expect(renameRun(rig, 'FOH', 'WINGS')).toEqual({ ok: false, error: { code: 'name-taken', name: 'WINGS' } });
    const recased = carried(rig, renameRun(rig, 'FOH', 'Foh'));
    expect(runChain(recased, 'foh').map((link) => link.kind === 'unit' && link.fixture.run)).toContain('Foh');
    expect(plantOf(recased.cards).runs.get('foh')?.name).toBe('Foh');
  });

  it('[RN17] are taken away with nothing left on them', () => {
    const gone = carried(rig, removeRun(rig, 'FOH'));
    expect([plantOf(gone.cards).runs.size, chain(gone, 'foh')]).toEqual([0, []]);
    expect(plantOf(gone.cards).splitters[0]).toMatchObject({ name: 'Split', run: '' });
    expect(plantOf(carried(rig, removeSplitter(rig, 's')).cards).splitters).toEqual([]);
  });

  it('[RN15] a splitter goes to the end of a run, and to another', () => {
    const made = carried(rig, addSplitter(rig, { id: 't', name: 'Two', run: 'FOH', outputs: 2 }));
    expect(chain(made, 'FOH')).toEqual(['a', 's', 't']);
    expect(chain(carried(made, putSplitter(made, 's', 'Wings')), 'wings')).toEqual(['b', 's']);
    expect(chain(carried(made, putSplitter(made, 's', '')), 'foh')).toEqual(['a', 't']);
    expect(addSplitter(rig, { id: 't', name: ' ', run: '', outputs: 2 }).ok).toBe(false);
    expect(addSplitter(rig, { id: 't', name: 'T', run: '', outputs: 0 }).ok).toBe(false);
  });
});
