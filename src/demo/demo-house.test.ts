import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { getRow, rowsOf } from '#base/table.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { tasksOf } from '#engine/diff/tasks.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { demoHousePlan } from './demo-house.ts';
import { demoPlan } from './demo-rig.ts';
import { demoRevisions } from './types/demo-types.ts';

const library = await demoRevisions(async (text) => createHash('sha256').update(text, 'utf8').digest('hex'));
const house = applyEdits(EMPTY_RIG, demoHousePlan(library).edits);
const show = applyEdits(EMPTY_RIG, demoPlan(library).edits);

describe('the demo house rig', () => {
  it('has no blocker, so that it may be frozen', () => {
    expect(checkRig(house).filter(({ severity }) => severity === 'blocker')).toEqual([]);
    expect(house.fixtures.size).toBe(60);
  });

  it('is what the show began as: most of it still hangs, and there is something of every kind to put back', () => {
    const stayed = [...rowsOf(house.fixtures)].filter(({ id }) => getRow(show.fixtures, id) !== undefined);
    expect(stayed).toHaveLength(56);
    const kinds = new Set(tasksOf(show, house).units.map(({ kind }) => kind));
    for (const kind of ['hang', 'take-down', 'set-address', 'set-mode', 'colour'] as const)
      expect(kinds).toContain(kind);
  });
});
