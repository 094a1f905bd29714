import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Edit } from '../model/edit.ts';
import { fixtureId } from '../model/ids.ts';
import { EMPTY_RIG } from '../model/rig.ts';
import { diffEdits } from './diff-edits.ts';
import { partOfEdit } from './part-of-edit.ts';
import { type Fate, isTakeable, proposalLines } from './proposal.ts';
import { diffRigs } from './rig-diff.ts';

const SHAPE = { fixtures: 20, universes: 3 };
const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);

/** A house at a revision, what was proposed against it, and the house as others have changed it since. */
function scene(seed: number) {
  const rng = seededRng(seed + 90_000);
  const base = randomRig(seed, SHAPE);
  const some = () => Array.from({ length: 1 + rng.int(30) }, () => randomEdit(rng, SHAPE));
  const edits = some();
  return { rng, base, edits, now: applyEdits(base, some()) };
}

interface Part {
  readonly was: string | undefined;
  readonly is: string | undefined;
  readonly wants: string | undefined;
}

/** The fate of a line, said a second time: by all its parts. */
function fateOf(parts: readonly Part[], isGone: boolean): Fate {
  if (isGone && parts.some(({ is }) => is === undefined)) return 'gone';
  if (parts.every(({ is, wants }) => is === wants)) return 'so-already';
  return parts.some(({ was, is, wants }) => is !== wants && is !== was) ? 'changed-since' : 'fits';
}

describe('a proposal', () => {
  it('[RS7] fits a house that is as it was, and taken whole makes it what was proposed', () => {
    for (const seed of SEEDS) {
      const { base, edits } = scene(seed);
      const lines = proposalLines(base, base, edits);
      expect(lines.every(({ fate }) => fate === 'fits')).toBe(true);
      const taken = lines.reduce((rig, { task }) => applyEdits(rig, task.edits), base);
      expect(taken, `seed ${seed}`).toEqual(applyEdits(base, edits));
    }
  });

  it('[RS7] says of each part what became of it, and what fits overwrites nothing of anybody', () => {
    for (const seed of SEEDS) {
      const { base, now, edits } = scene(seed);
      const wanted = applyEdits(base, edits);
      for (const { fate, task } of proposalLines(base, now, edits)) {
        const taken = applyEdits(now, task.edits);
        const parts = task.edits.map((edit) => ({
          was: partOfEdit(base, edit),
          is: partOfEdit(now, edit),
          wants: partOfEdit(wanted, edit),
          reads: partOfEdit(taken, edit),
        }));
        const where = `seed ${seed}, ${task.key}: ${fate}`;
        expect(fateOf(parts, fate === 'gone'), where).toBe(fate);
        if (fate !== 'gone') for (const { wants, reads } of parts) expect(reads, where).toBe(wants);
        if (fate === 'so-already') expect(diffEdits(diffRigs(now, taken))).toEqual([]);
      }
    }
  });

  it('[RS7] taken in part changes only what was taken', () => {
    for (const seed of SEEDS) {
      const { rng, base, now, edits } = scene(seed);
      const [taken, left] = [[], []] as [Edit[], Edit[]];
      for (const line of proposalLines(base, now, edits))
        (isTakeable(line) && rng.int(2) === 0 ? taken : left).push(...line.task.edits);
      const after = applyEdits(now, taken);
      for (const edit of left.filter((each) => each.kind === 'set-cell' || each.kind === 'set-card'))
        expect(partOfEdit(after, edit), `seed ${seed}`).toBe(partOfEdit(now, edit));
    }
  });

  it('[RS7] names the unit that is gone and the cell that another changed', () => {
    const [a, b, c, d] = ['a', 'b', 'c', 'd'].map(fixtureId) as [never, never, never, never];
    const address = (fixture: typeof a, value: number): Edit => ({
      kind: 'set-cell',
      fixture,
      field: 'address',
      value,
    });
    const base = applyEdits(
      EMPTY_RIG,
      [a, b, c, d].map(
        (fixture, nth): Edit => ({ kind: 'add-fixture', fixture, cells: { unit: `${nth}`, address: 1 } }),
      ),
    );
    const now = applyEdits(base, [{ kind: 'remove-fixture', fixture: b }, address(c, 9), address(d, 20)]);
    const lines = proposalLines(
      base,
      now,
      [a, b, c, d].map((fixture) => address(fixture, 20)),
    );
    expect(lines.map(({ task, fate }) => `${task.key}: ${fate}`)).toEqual([
      'a set-address: fits',
      'b set-address: gone',
      'c set-address: changed-since',
      'd set-address: so-already',
    ]);
  });
});
