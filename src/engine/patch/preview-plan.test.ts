import { describe, expect, it } from 'vitest';
import { addressOf, printFinding, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../check/check-rig.ts';
import { createChecker } from '../check/checker.ts';
import type { Plan } from '../model/edit.ts';
import { fixtureId } from '../model/ids.ts';
import { previewPlan } from './preview-plan.ts';

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
