import { describe, expect, it } from 'vitest';
import { clashes, isClash, shown, shuffled } from '#tests/support/planned.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { printFinding, printPlan, rigOf } from '#tests/support/rig-shorthand.ts';
import { checkRig } from '../check/check-rig.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Finding } from '../model/finding.ts';
import type { Rig } from '../model/rig.ts';
import { clearClash } from './clear-clash.ts';

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
          expect(['mode-unknown', 'too-wide', 'locked', 'held'], `seed ${seed}`).toContain(plan.error.code);
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
