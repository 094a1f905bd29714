import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { listRig, randomPlan } from '#tests/support/random-plan.ts';
import { readRig, watchRig } from '../read/rig-reader.ts';
import { createRigDoc } from '../schema/rig-doc.ts';
import { applyPlan } from './apply-plan.ts';

describe('applyPlan', () => {
  it('[DO20] leaves a document that reads as applyEdits of its reading before', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const rng = seededRng(seed);
      const doc = createRigDoc();
      const reader = watchRig(doc);
      for (let step = 0; step < 40; step++) {
        const plan = randomPlan(rng, 8, 12);
        const wanted = applyEdits(reader.rig(), plan.edits);
        expect(applyPlan(doc, plan, 'me')).toEqual({ ok: true, value: undefined });
        expect(listRig(reader.rig()), `seed ${seed} step ${step}`).toEqual(listRig(wanted));
        expect(listRig(readRig(doc)), `seed ${seed} step ${step}`).toEqual(listRig(wanted));
      }
    }
  });
});
