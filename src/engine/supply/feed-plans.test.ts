import { describe, expect, it } from 'vitest';
import type { Result } from '#base/result.ts';
import { rowsOf } from '#base/table.ts';
import { statedRig } from '#tests/support/stated-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import { setCard } from '../model/card-edits.ts';
import type { Plan } from '../model/edit.ts';
import { fixtureId } from '../model/ids.ts';
import { plantOf } from '../model/plant.ts';
import type { Rig } from '../model/rig.ts';
import type { PlanRefusal } from '../patch/plan-refusal.ts';
import { addNamed, feedPlan, removeNamed, renameNamed } from './feed-plans.ts';

const RIG = applyEdits(
  statedRig(
    [
      { circuit: 'C1', type: 'Par' },
      { circuit: 'c1 ', type: 'Par' },
      { circuit: 'C2', type: 'Par' },
    ],
    { Par: null },
  ),
  [
    ...setCard('supply', 'mains', { name: 'Mains' }),
    ...setCard('circuit', 'c1', { name: 'C1', rating: 16, supply: 'MAINS' }),
  ],
);
const ids = ['f1', 'f2', 'f3'].map(fixtureId);

/** Circuits of units and what is described, after a plan; or why there is none. */
function then(plan: Result<Plan, PlanRefusal>, rig: Rig = RIG) {
  if (!plan.ok) return plan.error.code;
  const next = applyEdits(rig, plan.value.edits);
  const { circuits, supplies, limits } = plantOf(next.cards);
  return [
    [...rowsOf(next.fixtures)]
      .sort((a, b) => (a.id < b.id ? -1 : 1))
      .map(({ circuit }) => circuit || '-')
      .join(' '),
    [...circuits.values()]
      .map(({ key, name, rating, supply }) => `${key}=${name}/${rating ?? '-'}@${supply || '-'}`)
      .join(' '),
    [...supplies.values()].map(({ key, name }) => `${key}=${name}`).join(' '),
    [...limits.values()].map(({ key, kilograms }) => `${key}<${kilograms}`).join(' '),
  ].join(' | ');
}

describe('plans of feeds', () => {
  it('[SF1] put units on a circuit as it is called, and describe one that is new', () => {
    expect(then(feedPlan(RIG, ids, ' c1'))).toBe('C1 c1  C1 | c1=C1/16@MAINS | mains=Mains | ');
    expect(then(feedPlan(RIG, ids.slice(2), 'C9'))).toBe('C1 c1  C9 | c1=C1/16@MAINS c9=C9/-@- | mains=Mains | ');
    expect(then(feedPlan(RIG, ids, ' '))).toBe('- - - | c1=C1/16@MAINS | mains=Mains | ');
    expect(then(feedPlan(RIG, ids.slice(0, 2), 'C1'))).toBe('changes-nothing');
    expect(then(feedPlan(RIG, [], 'C1'))).toBe('nothing-chosen');
  });

  it('[SF2] describe one more, under a name that is free', () => {
    expect(then(addNamed(RIG, 'limit', 'LX 1', { kilograms: 500 }))).toMatch(/ \| lx 1<500$/);
    expect(then(addNamed(RIG, 'circuit', 'C2', { supply: 'Mains' }))).toMatch(/c2=C2\/-@Mains/);
    expect(then(addNamed(RIG, 'supply', ' mains'))).toBe('name-taken');
    expect(then(addNamed(RIG, 'supply', '  '))).toBe('no-name');
  });

  it('[SF3] rename a circuit with its units and a supply with its circuits, all that is known of them with it', () => {
    expect(then(renameNamed(RIG, 'circuit', 'c1', 'FB 1'))).toBe('FB 1 FB 1 C2 | fb 1=FB 1/16@MAINS | mains=Mains | ');
    expect(then(renameNamed(RIG, 'supply', 'mains', 'Stage left'))).toBe(
      'C1 c1  C2 | c1=C1/16@Stage left | stage left=Stage left | ',
    );
    expect(then(renameNamed(RIG, 'supply', 'mains', 'MAINS'))).toMatch(/@MAINS \| mains=MAINS/);
    const two = applyEdits(RIG, setCard('circuit', 'c2', { name: 'C2' }));
    expect(then(renameNamed(two, 'circuit', 'c1', 'c2'), two)).toBe('name-taken');
  });

  it('[SF4] take a card away, and leave what names it', () => {
    expect(then(removeNamed(RIG, 'circuit', 'c1'))).toBe('C1 c1  C2 |  | mains=Mains | ');
    expect(then(removeNamed(RIG, 'supply', 'gone'))).toBe('changes-nothing');
  });
});
