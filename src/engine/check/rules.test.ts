import { describe, expect, it } from 'vitest';
import { printFinding, rigOf } from '#tests/support/rig-shorthand.ts';
import { applyEdits } from '../model/apply-edits.ts';
import type { Rule } from '../model/finding.ts';
import { fixtureId } from '../model/ids.ts';
import { checkRig } from './check-rig.ts';
import { rigSummary } from './rig-summary.ts';
import { RULES, SEVERITY_OF } from './severity.ts';

const found = (text: string) => checkRig(rigOf(text)).map(printFinding);

describe('slots claimed twice', () => {
  it('[CH1] is one finding per run of slots claimed by the same fixtures', () => {
    expect(found('1:354 Spot/27 #1\n1:374 Spot/27 #2')).toEqual(['blocker slots-claimed-twice 1:374-380 f1 f2']);
    expect(found('1:1 Spot/10 #1\n1:5 Spot/10 #2\n1:8 Spot/10 #3')).toEqual([
      'blocker slots-claimed-twice 1:5-7 f1 f2',
      'blocker slots-claimed-twice 1:8-10 f1 f2 f3',
      'blocker slots-claimed-twice 1:11-14 f2 f3',
    ]);
  });

  it('[CH1] is nothing where fixtures only touch, or lie in two universes', () => {
    expect(found('1:1 Spot/10 #1\n1:11 Spot/10 #2\n2:1 Spot/10 #3\n1:503 Spot/10 #4\n2:11 Spot/10 #5')).toEqual([]);
  });

  it('[CH1] goes on from break to break while the fixtures are the same', () => {
    expect(found('1:1+1:11 Bar/10+10 #1\n1:5 Wide/12 #2')).toEqual(['blocker slots-claimed-twice 1:5-16 f1 f2']);
  });

  it('[CH3] names a fixture alone whose own breaks overlap, beside what others claim there', () => {
    expect(found('1:1+1:6 Bar/10+10 #1')).toEqual(['blocker slots-claimed-twice 1:6-10 f1']);
    expect(found('1:1+1:6 Bar/10+10 #1\n1:8 Dim/1 #2')).toEqual([
      'blocker slots-claimed-twice 1:6-10 f1',
      'blocker slots-claimed-twice 1:8-8 f1 f2',
    ]);
    expect(found('1:1+1:1+1:3 Tri/2+4+9 #1')).toEqual(['blocker slots-claimed-twice 1:1-4 f1']);
  });

  it('[CH4] makes one finding of a thousand fixtures on one address', () => {
    const findings = checkRig(rigOf('1:1 Spot/16\n'.repeat(1000))).filter(({ rule }) => rule === 'slots-claimed-twice');
    expect(findings.map(({ fixtures }) => fixtures.length)).toEqual([1000]);
  });

  it('[CH4] joins neighbouring crowds that share a fixture, and keeps apart those that share none', () => {
    const crowds = `${'1:1 Spot/10\n'.repeat(65)}${'1:11 Wash/10\n'.repeat(65)}`;
    const sizes = (text: string) =>
      checkRig(rigOf(text))
        .filter(({ rule }) => rule === 'slots-claimed-twice')
        .map(({ fixtures }) => fixtures.length);
    expect(sizes(crowds)).toEqual([65, 65]);
    expect(sizes(`${crowds}1:1+1:11 Bar/10+10`)).toEqual([131]);
    expect(sizes(`${crowds}1:10 Pair/2`)).toEqual([131]);
  });

  it('[CH4] says of a stair of a thousand fixtures not more than a few thousand names', () => {
    const stair = Array.from({ length: 1000 }, (_, at) => `1:${1 + (at % 400)} Spot/${20 + (at % 90)}`).join('\n');
    const findings = checkRig(rigOf(stair)).filter(({ rule }) => rule === 'slots-claimed-twice');
    const names = findings.reduce((total, { fixtures }) => total + fixtures.length, 0);
    expect(names).toBeLessThan(1000 + 512 * 64);
    expect(new Set(findings.flatMap(({ fixtures }) => fixtures)).size).toBe(1000);
  });
});

describe('acting as one', () => {
  it('[CH2] is a note for one channel, one mode, one start', () => {
    expect(found('1:1 Spot/16 #5\n1:1 SPOT/16 #5')).toEqual(['note acting-as-one 1:1-16 f1 f2']);
    expect(found('1:1+2:1 Bar/4+8 #5\n1:1+2:1 Bar/4+8 #5')).toEqual([
      'note acting-as-one 1:1-4 f1 f2',
      'note acting-as-one 2:1-8 f1 f2',
    ]);
  });

  it('[CH2] is a blocker naming all where another fixture claims a slot of theirs', () => {
    expect(found('1:1 Spot/16 #5\n1:1 Spot/16 #5\n1:10 Spot/16 #6')).toEqual([
      'blocker slots-claimed-twice 1:10-16 f1 f2 f3',
      'note acting-as-one 1:1-9 f1 f2',
    ]);
  });

  it('[CH2] is not meant by fixtures without a channel, of two channels, modes or starts', () => {
    expect(found('1:1 Spot/16\n1:1 Spot/16')).toEqual(['blocker slots-claimed-twice 1:1-16 f1 f2']);
    expect(found('1:1 Spot/16 #5\n1:1 Spot/16 #6')).toEqual(['blocker slots-claimed-twice 1:1-16 f1 f2']);
    expect(found('1:1 Spot/16 #5\n1:1 Spot/27 #5')[0]).toBe('blocker slots-claimed-twice 1:1-16 f1 f2');
    expect(found('1:1 Spot/16 #5\n1:2 Spot/16 #5')[0]).toBe('blocker slots-claimed-twice 1:2-16 f1 f2');
  });
});

describe('the other rules', () => {
  it('[CH5] past the end: by how many slots, break by break', () => {
    expect(found('3:500 Batten/48 #1')).toEqual(['blocker past-the-end 3:500-512 break 1 over 35 f1']);
    expect(found('3:497 Spot/16 #1')).toEqual([]);
    expect(found('1:1+2:512 Bar/4+2 #1')).toEqual(['blocker past-the-end 2:512-512 break 2 over 1 f1']);
  });

  it('[CH6] [CH7] tells an unknown type from an unknown mode, and counts one slot for it', () => {
    expect(found('1:1 Ghost/? #1\n2:1 Spot/16 #2\n2:20 Spot/? #3\n2:16 Spot/16 #4')).toEqual([
      'blocker slots-claimed-twice 2:16-16 f2 f4',
      'blocker slots-claimed-twice 2:20-20 f3 f4',
      'caution unknown-type f1',
      'caution unknown-mode f3',
    ]);
  });

  it('[CH8] unpatched: wholly, or one of its breaks', () => {
    expect(found('- Spot/16 #1\n1:1 Bar/4+8 #2\n-+2:1 Bar/4+8 #3\n1:9 Half/0+4 #4')).toEqual([
      'caution unpatched f1',
      'caution unpatched f4',
      'caution unpatched break 1 f3',
      'caution unpatched break 2 f2',
    ]);
  });

  it('[CH9] unreadable: each cell', () => {
    const rig = applyEdits(rigOf('1:1 Spot/16 #1'), [
      { kind: 'set-cell', fixture: fixtureId('f1'), field: 'channel', value: '12 or 13' },
      { kind: 'set-cell', fixture: fixtureId('f1'), field: 'address2', value: 'later' },
    ]);
    expect(checkRig(rig).map(printFinding)).toEqual([
      'caution unreadable address2 "later" f1',
      'caution unreadable channel "12 or 13" f1',
    ]);
  });

  it('[CH10] same place: folded, and only with both position and unit', () => {
    expect(found('1:1 Spot/16 #1 @LX1.4\n1:17 Spot/16 #2 @lx1.4\n1:33 Spot/16 #3 @LX1.4A')).toEqual([
      'caution same-place f1 f2',
    ]);
    expect(found('1:1 Spot/16 #1 @LX1.\n1:17 Spot/16 #2 @LX1.\n1:33 Spot/16 #3 @.4\n1:49 Spot/16 #4 @.4')).toEqual([]);
  });

  it('[CH11] [CH12] one channel: on unlike fixtures a caution, on like ones elsewhere a note', () => {
    expect(found('1:1 Spot/16 #7\n1:17 Wash/8 #7\n1:33 Spot/16 #7')).toEqual(['caution channel-on-unlike #7 f1 f2 f3']);
    expect(found('1:1 Spot/16 #7\n1:17 spot/16 #7')).toEqual(['note channel-shared #7 f1 f2']);
    expect(found('- Spot/16 #7\n- Spot/16 #7')).toEqual(['caution unpatched f1', 'caution unpatched f2']);
  });

  it('[CH20] weighs every rule, blockers before cautions before notes', () => {
    const ranks = { blocker: 0, caution: 1, note: 2 };
    const order = RULES.map((rule: Rule) => ranks[SEVERITY_OF[rule]]);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('[CH21] a key says everything its finding says', () => {
    const keys = (text: string) => checkRig(rigOf(text)).map(({ key }) => key);
    expect(keys('3:500 Batten/48')).not.toEqual(keys('3:500 Batten/49'));
    expect(keys('1:1 Ghost/a')).not.toEqual(keys('1:1 Spectre/a'));
    expect(keys('1:1 Spot/16 #7\n1:17 Wash/8 #7')).not.toEqual(keys('1:1 Spot/16 #8\n1:17 Wash/8 #8'));
  });
});

describe('rigSummary', () => {
  it('[SU1] gives the figures of a rig', () => {
    const rig = rigOf('1:354 Spot/27 #104 x2\n1:374 Spot/27 #213\n3:500 Batten/48 #213\n- Haze/2\n4:1 Ghost/?');
    const { overlapPairs, ...figures } = rigSummary(rig);
    expect(figures).toEqual({
      fixtures: 6,
      patched: 5,
      unpatched: ['f5'],
      universes: [1, 3, 4],
      slotsAsked: 27 * 3 + 48 + 1,
      morePairs: false,
      pastEnd: ['f4'],
      sharedChannels: [213],
    });
    expect(overlapPairs).toEqual([
      { run: { universe: 1, first: 374, last: 380 }, fixtures: ['f1', 'f3'], asOne: false },
      { run: { universe: 1, first: 381, last: 400 }, fixtures: ['f2', 'f3'], asOne: false },
    ]);
  });

  it('[SU1] marks pairs that act as one, and stops listing pairs at a limit', () => {
    expect(rigSummary(rigOf('1:1 Spot/16 #5\n1:1 Spot/16 #5')).overlapPairs[0]?.asOne).toBe(true);
    const crowd = rigSummary(rigOf('1:1 Spot/16\n'.repeat(500)));
    expect([crowd.overlapPairs.length, crowd.morePairs]).toEqual([2000, true]);
  });
});
