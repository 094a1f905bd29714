import { describe, expect, it } from 'vitest';
import { HAZARD_KINDS, LASER_CLASSES, NO_HAZARDS } from '#engine/model/fixture-type.ts';
import { DEFECT_CODES } from '#engine/type/gdtf-report.ts';
import type { TypeTrouble } from '#engine/type/type-troubles.ts';
import { CAUTION_FOOT, footprintWords, hazardCautions, typeTroubleSentence } from './fixture-types.ts';
import { defectSentence } from './gdtf.ts';

const mode = 'Wide';
const TROUBLES: readonly TypeTrouble[] = [
  { kind: 'mode-named-twice', mode },
  { kind: 'no-slots', mode },
  { kind: 'only-virtual', mode, channels: 3 },
  { kind: 'slot-taken-twice', mode, break: 1, first: 4, last: 5, channels: ['Body_Dimmer', 'Body_Pan'] },
  { kind: 'past-512', mode, break: 1, last: 520 },
  { kind: 'break-beyond', mode, break: 5 },
  { kind: 'unreached', mode, channel: 'Head_Pan' },
  { kind: 'channel-named-twice', mode, channel: 'Body_Dimmer' },
  { kind: 'values-overlap', mode, channel: 'Body_Dimmer', function: null, at: 10 },
  { kind: 'values-gap', mode, channel: 'Body_Dimmer', function: 'Open', from: 0, to: 9 },
  { kind: 'range-outside', mode, channel: 'Body_Dimmer', function: 'Open', at: 200 },
];

describe('what is said of fixture types', () => {
  it('names the mode and ends every sentence of trouble, each its own', () => {
    const sentences = TROUBLES.map(typeTroubleSentence);
    for (const sentence of sentences) expect(sentence).toMatch(/^Mode “Wide”: .+\.$/);
    expect(new Set(sentences).size).toBe(TROUBLES.length);
  });

  it('names the line of every defect, each in its own words', () => {
    const sentences = DEFECT_CODES.map((code) => defectSentence({ code, line: 12, what: 'this' }));
    for (const sentence of sentences) expect(sentence).toMatch(/^Line 12: .+\.$/);
    expect(new Set(sentences).size).toBe(DEFECT_CODES.length);
  });

  it('has a caution for every hazard and every laser class, and none for a type without', () => {
    expect(hazardCautions(NO_HAZARDS)).toEqual([]);
    for (const kind of HAZARD_KINDS) expect(hazardCautions({ ...NO_HAZARDS, [kind]: true })).toHaveLength(1);
    for (const laser of LASER_CLASSES) {
      expect(hazardCautions({ ...NO_HAZARDS, laser })[0]).toMatch(
        laser === 'unknown' ? /not stated/ : `class ${laser}.`,
      );
    }
    expect(CAUTION_FOOT).toMatch(/local codes/);
  });

  it('counts the slots of a mode, break by break', () => {
    expect([[1], [27], [4, 4], []].map(footprintWords)).toEqual(['1 slot', '27 slots', '4 + 4 slots', '0 slots']);
  });
});
