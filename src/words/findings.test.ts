import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { RULES, SEVERITIES } from '#engine/check/severity.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { FIELDS } from '#engine/model/field.ts';
import { fixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { randomCardEdit } from '#tests/support/random-card.ts';
import { RANDOM_LIBRARY, randomRig } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import {
  countedSeverity,
  FIELD_WORDS,
  findingSentence,
  findingSentenceFor,
  RULE_TITLES,
  SEVERITY_WORDS,
  unitNames,
} from './findings.ts';

const full = (rig: Rig) => checkRig(rig).map((finding) => findingSentence(finding, rig));
const margin = (rig: Rig, id: string) =>
  checkRig(rig)
    .filter(({ fixtures }) => fixtures.includes(fixtureId(id)))
    .map((finding) => findingSentenceFor(finding, fixtureId(id), rig));

describe('findings in words', () => {
  it('say who else claims the slots', () => {
    const rig = rigOf('1:354 Spot/27 #104 @LX-1.4\n1:374 Spot/27 #105 @LX-1.5');
    expect(full(rig)).toEqual(['Slots 1:374–380 are claimed by LX-1 · 4 and LX-1 · 5']);
    expect(margin(rig, 'f1')).toEqual(['Slots 1:374–380 are also LX-1 · 5']);
    expect(margin(rig, 'f2')).toEqual(['Slots 1:374–380 are also LX-1 · 4']);
    expect(margin(rigOf('1:1 Spot/16 #1\n1:16 Dim/1 #2'), 'f2')).toEqual(['Slot 1:16 is also channel 1']);
  });

  it('say each other rule, in full and in the margin', () => {
    const rig = applyEdits(
      rigOf(
        [
          '1:1+1:6 Bar/10+10 #1 @A.1',
          '3:500 Batten/48 #2 @A.2',
          '4:1 Ghost/? #3 @A.3',
          '4:20 Batten/? #4 @A.4',
          '- Batten/48 #5 @A.5',
          '5:1 Bar/10+10 #6 @A.6',
          '6:1 Batten/48 #7 @B.1',
          '6:1 Batten/48 #7 @B.2',
          '6:101 Batten/48 #8 @B.3',
          '6:151 Batten/48 #8 @B.4',
          '6:201 Batten/48 #9 @B.5',
          '6:251 Dim/1 #9 @B.6',
          '6:301 Dim/1 #10 @C.1',
          '6:302 Dim/1 #11 @c.1',
          '6:303 Dim/1 #12 @C.2',
          '6:304 Dim/ #13 @C.3',
          '6:305 / #14 @C.4',
        ].join('\n'),
      ),
      [{ kind: 'set-cell', fixture: fixtureId('f15'), field: 'address2', value: 'later' }],
    );
    expect(full(rig)).toEqual([
      'Slots 1:6–10 are claimed by two breaks of A · 1',
      'A · 2: runs 35 slots past slot 512 of universe 3',
      'C · 4: no type given',
      'A · 3: type “Ghost” is not known in this rig',
      'A · 4: mode “?” of “Batten” is not known in this rig',
      'C · 3: no mode given for “Dim”',
      'A · 5: no address yet',
      'A · 6: no address for break 2',
      'Channel 9 is on unlike units: B · 5 and B · 6',
      'C · 1 is the place of 2 units (channels 10, 11)',
      'C · 2: cannot read “later” as address of break 2',
      'B · 1 and B · 2 act as one on 6:1–48',
      'Channel 8 is on B · 3 and B · 4, at different addresses',
    ]);
    expect(['f1', 'f2', 'f7', 'f10', 'f12', 'f13', 'f15'].flatMap((id) => margin(rig, id))).toEqual([
      'Slots 1:6–10 are claimed by two breaks of this unit',
      'Runs 35 slots past slot 512 of universe 3',
      'Acts as one with B · 2',
      'Channel 8 is also on B · 3, at another address',
      'Channel 9 is also on an unlike unit: B · 5',
      'Same position and unit as 1 other row',
      'Cannot read “later” as address of break 2',
    ]);
  });

  it('have a title for each rule, words for each severity and field, and a sentence for whatever is found', () => {
    expect(Object.keys(RULE_TITLES).sort()).toEqual([...RULES].sort());
    expect(Object.keys(SEVERITY_WORDS).sort()).toEqual([...SEVERITIES].sort());
    expect(Object.keys(FIELD_WORDS)).toEqual([...FIELDS]);
    expect([1, 3].map((count) => countedSeverity(count, 'caution'))).toEqual(['1 caution', '3 cautions']);
    const said = new Set<string>();
    for (let seed = 1; seed <= 40; seed++) {
      const rng = seededRng(seed);
      const cards = Array.from({ length: 1500 }, () => randomCardEdit(rng));
      const rig = applyEdits(randomRig(seed, { fixtures: seed % 5 === 0 ? 120 : 30, universes: 2 }), cards);
      for (const finding of checkRig(rig, RANDOM_LIBRARY)) {
        said.add(finding.rule);
        const sentences = [
          findingSentence(finding, rig),
          ...finding.fixtures.map((id) => findingSentenceFor(finding, id, rig)),
        ];
        for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|NaN|null|\n/);
      }
    }
    expect([...said].sort()).toEqual([...RULES].sort());
  });

  it('name a few of a crowd and count the rest', () => {
    const rig = rigOf('1:1 Spot/16 x9 @LX.1');
    const ids = Array.from({ length: 9 }, (_, at) => fixtureId(`f${at + 1}`));
    expect(unitNames(ids, rig)).toBe('LX · 1, LX · 2, LX · 3, LX · 4, LX · 5, LX · 6 and 3 more');
    expect(unitNames([fixtureId('gone')], rig)).toBe('a unit that is gone');
  });
});
