import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { naiveCheck } from '#tests/support/naive-check.ts';
import { RANDOM_LIBRARY, randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { printFinding } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Finding, Rule } from '../model/finding.ts';
import { EMPTY_RIG, type Rig } from '../model/rig.ts';
import { checkRig } from './check-rig.ts';
import { type Checker, createChecker } from './checker.ts';
import type { FindingsDelta } from './standing-findings.ts';
import { NO_LIBRARY } from './type-findings.ts';

/** Takes a set of keys from one step to the next. */
function follow(held: Set<string>, { added, removed }: FindingsDelta): void {
  for (const { key } of removed) held.delete(key);
  for (const { key } of added) held.add(key);
}

/** Compared as text first: thousands of deep comparisons would be most of the time of a test. */
function compareWithFull(checker: Checker, held: ReadonlySet<string>, at: object): void {
  const whole = keys(checkRig(checker.rig, checker.library));
  const listed = keys(checker.findings());
  const told = [...held].sort();
  if (listed.join() === whole.join() && told.join() === [...whole].sort().join()) return;
  expect({ ...at, listed, told }).toEqual({ ...at, listed: whole, told: whole.sort() });
}

/** Rules of copied types, which `rules.test.ts` holds to written-out cases. */
const TYPE_RULES: ReadonlySet<Rule> = new Set([
  'no-slots',
  'firmware-mode',
  'firmware-wanted',
  'hazard-unsigned',
  'library-differs',
]);
const printed = (rig: Rig) =>
  checkRig(rig)
    .filter(({ rule }) => !TYPE_RULES.has(rule))
    .map(printFinding)
    .sort();
const keys = (findings: readonly Finding[]) => findings.map(({ key }) => key);

describe('checkRig', () => {
  it('[CH1]–[CH12] says what the rules written out slot by slot and pair by pair say', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const rig = randomRig(seed, { fixtures: 2 + (seed % 40), universes: 1 + (seed % 3) });
      expect(printed(rig), `seed ${seed}`).toEqual(naiveCheck(rig));
    }
  });

  it('[CH4] names a crowd once, and agrees with the rules written out when hundreds claim the same slots', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const rig = randomRig(seed, { fixtures: 60 + seed * 40, universes: 1 });
      expect(printed(rig), `seed ${seed}`).toEqual(naiveCheck(rig));
    }
  });

  it('[CH22] does not depend on the order of rows', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const rig = randomRig(seed, { fixtures: 60, universes: 2 });
      const shuffled = [...rowsOf(rig.fixtures)].reverse();
      const check = (of: Rig) => keys(checkRig(of, RANDOM_LIBRARY));
      expect(check({ ...rig, fixtures: tableOf(shuffled) })).toEqual(check(rig));
    }
  });
});

describe('a checker', () => {
  it('[CH23] holds exactly what a full check says after every one of many thousand random edits', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const shape = { fixtures: 12 + seed * 4, universes: 2 };
      const rng = seededRng(seed);
      let rig = randomRig(seed, shape);
      const checker = createChecker(rig);
      const held = new Set(keys(checker.findings()));
      for (let step = 0; step < 1500; step++) {
        const edits = Array.from({ length: 1 + rng.int(3) }, () => randomEdit(rng, shape));
        rig = applyEdits(rig, edits);
        if (rng.int(50) === 0) follow(held, checker.setLibrary(rng.pick([NO_LIBRARY, RANDOM_LIBRARY])));
        follow(held, checker.update(rig));
        compareWithFull(checker, held, { seed, step, edits });
      }
    }
  });

  it('counts by severity, and knows the findings of each fixture', () => {
    const shape = { fixtures: 40, universes: 2 };
    const rng = seededRng(5);
    let rig = randomRig(5, shape);
    const checker = createChecker(rig);
    for (let step = 0; step < 500; step++) {
      rig = applyEdits(rig, [randomEdit(rng, shape)]);
      checker.update(rig);
      const all = checker.findings();
      const of = (severity: string) => all.filter((finding) => finding.severity === severity).length;
      expect(checker.counts()).toEqual({ blocker: of('blocker'), caution: of('caution'), note: of('note') });
      for (const { id } of rowsOf(rig.fixtures)) {
        expect(checker.findingsOf(id)).toEqual(all.filter(({ fixtures }) => fixtures.includes(id)));
      }
    }
  });

  it('keeps a finding that stays the same object, and its lists too when nothing came or went', () => {
    const shape = { fixtures: 30, universes: 2 };
    const rng = seededRng(11);
    let rig = randomRig(11, shape);
    const checker = createChecker(rig);
    for (let step = 0; step < 300; step++) {
      const before = checker.findings();
      rig = applyEdits(rig, [randomEdit(rng, shape)]);
      const { added, removed } = checker.update(rig);
      const after = checker.findings();
      if (added.length + removed.length === 0) expect(after).toBe(before);
      const known = new Map(before.map((finding) => [finding.key, finding]));
      for (const finding of after) expect(known.get(finding.key) ?? finding).toBe(finding);
    }
  });

  it('is as good on the way back: to the empty rig and to where it was', () => {
    const rig = randomRig(3, { fixtures: 50, universes: 2 });
    const checker = createChecker(rig);
    const before = keys(checker.findings());
    checker.update(EMPTY_RIG);
    expect(checker.findings()).toEqual([]);
    expect(checker.counts()).toEqual({ blocker: 0, caution: 0, note: 0 });
    expect(checker.occupancy.universes()).toEqual([]);
    checker.update(rig);
    expect(keys(checker.findings())).toEqual(before);
  });
});
