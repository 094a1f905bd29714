import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { randomPlan } from '#tests/support/random-plan.ts';
import { freezeRig } from '../frozen/frozen-rig.ts';
import { readRig } from '../read/rig-reader.ts';
import { formatOf } from '../schema/rig-doc.ts';
import { beginDoc } from './begin-doc.ts';
import { EDIT_LIMIT } from './edit-schema.ts';

describe('a document that begins as a rig', () => {
  it('[DO62] reads as that rig', () => {
    for (let seed = 0; seed < 200; seed++) {
      const rig = applyEdits(EMPTY_RIG, randomPlan(seededRng(seed), 12, 150).edits);
      const doc = beginDoc(rig);
      expect(formatOf(doc)).toBe('current');
      expect(freezeRig(readRig(doc))).toBe(freezeRig(rig));
    }
  });

  it('[DO62] may hold more than a plan could write', () => {
    const edits = Array.from({ length: EDIT_LIMIT + 1 }, (_, at) => ({
      kind: 'set-card' as const,
      card: 'spare' as const,
      key: `s${at}`,
      field: 'type' as const,
      value: at === 0 ? 'x'.repeat(2001) : 'Wash',
    }));
    const rig = applyEdits(EMPTY_RIG, edits);
    expect(readRig(beginDoc(rig)).cards.size).toBe(EDIT_LIMIT + 1);
  });
});
