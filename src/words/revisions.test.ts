import { describe, expect, it } from 'vitest';
import type { Provenance, RigRevisionSummary } from '#wire/record.ts';
import {
  acceptedText,
  originSentence,
  provenanceSentence,
  provenanceShort,
  revisionFacts,
  shortHash,
} from './revisions.ts';

const REVISION: RigRevisionSummary = {
  number: 3,
  hash: '3fa290c1aa00',
  note: 'As hung',
  units: 1,
  counts: { blocker: 2, caution: 1, note: 0 },
  accepted: [],
  by: 'Lena',
  at: '2026-11-25T12:00:00.000Z',
};

const FROM: Provenance = {
  rigId: 'r',
  rigName: 'House',
  rigKind: 'house',
  crewId: 'c',
  crewName: 'Lampwrights',
  venueName: 'The Kettle',
  number: 3,
  hash: REVISION.hash,
  at: '2026-11-30T12:00:00.000Z',
  way: 'started',
};

describe('a revision', () => {
  it('is told by who, when, how many units and what the check found', () => {
    expect(revisionFacts(REVISION)).toMatch(/^Lena, 25 November 2026, \d\d:\d\d · 1 unit · 2 blockers, 1 caution$/);
    expect(revisionFacts({ ...REVISION, units: 1200, counts: { blocker: 0, caution: 0, note: 0 } })).toMatch(
      / · 1,200 units · no findings$/,
    );
  });

  it('is read aloud by the first figures of its hash', () => {
    expect(shortHash(REVISION.hash)).toBe('3fa2 90c1');
  });

  it('names each person who accepts blockers once', () => {
    expect(acceptedText(REVISION)).toBeUndefined();
    const by = (name: string, key: string) => ({ key, by: name });
    expect(acceptedText({ ...REVISION, accepted: [by('Ona Reeve', 'a'), by('Ona Reeve', 'b')] })).toBe(
      '2 blockers accepted by Ona Reeve.',
    );
  });
});

describe('where a rig came from', () => {
  it('names rig, venue, revision, crew and day', () => {
    expect(provenanceSentence(FROM)).toBe(
      'Started from house rig “House” of The Kettle, revision 3, by crew Lampwrights, on 30 November 2026.',
    );
    expect(provenanceSentence({ ...FROM, venueName: null, way: 'handover' })).toMatch(
      /^Taken over as house rig “House”, revision 3,/,
    );
    expect(provenanceShort(FROM)).toBe('from “House”, revision 3');
  });

  it('says of a unit what was changed since', () => {
    expect(originSentence(FROM, [])).toBe('As the house rig (revision 3) has it.');
    expect(originSentence(FROM, ['address', 'mode'])).toBe(
      'Came from the house rig (revision 3), changed since: address and mode.',
    );
    expect(originSentence(FROM, undefined)).toBe('Not in the house rig (revision 3): added for this one.');
  });
});
