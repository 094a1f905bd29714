import { describe, expect, it } from 'vitest';
import { allocatePlan } from '#engine/patch/allocate/allocate-plan.ts';
import { repairPlan } from '#engine/patch/repair/repair-plan.ts';
import { roomFor } from '#engine/patch/spare/room-for.ts';
import { idsOf } from '#tests/support/random-rig.ts';
import { rigOf } from '#tests/support/rig-shorthand.ts';
import { allocationSentences, repairSentences, spareSentence } from './packing.ts';

describe('words of packing', () => {
  const allocated = (text: string, options = {}) => {
    const rig = rigOf(text);
    const made = allocatePlan(
      rig,
      idsOf(rig).filter((id) => rig.fixtures.size < 3 || id !== 'f1'),
      options,
    );
    return made.ok ? allocationSentences(made.value) : made.error;
  };

  it('say where units come to lie and how few universes there could be', () => {
    expect(allocated('- Spot/300 x2')).toEqual([
      'The units come to lie in universes 1 and 2.',
      '2 of these are used by nobody else; fewer are not possible.',
    ]);
    expect(allocated('1:1 House/12\n- Spot/20 x3')).toEqual([
      'The units come to lie in universe 1.',
      'No universe is used that was not in use.',
    ]);
    expect(allocated('1:1 House/400\n- Spot/200 x5 @Bridge.1', { together: 'by-position' })).toEqual([
      'The units come to lie in universes 2 to 4.',
      '3 of these are used by nobody else; fewer are not possible.',
      'Not kept in one run, for want of room: “Bridge”.',
    ]);
    expect(
      allocated('9:1 House/512\n- Spot/200\n- Wash/400\n- Spot/200\n- Wash/400', { together: 'in-order' }),
    ).toContain('4 of these are used by nobody else; proven is that 3 or more are needed.');
  });

  it('say what a repair costs and leaves', () => {
    const said = (text: string) => {
      const rig = rigOf(text);
      const repair = repairPlan(rig);
      return repair.ok ? repairSentences(repair.value, rig) : repair.error;
    };
    expect(said('1:1 Spot/20\n1:15 Spot/20')).toEqual([
      '1 unit moves; that costs 1, counting 1 for a unit that is easy to move.',
      'Nothing that clears as much costs less.',
    ]);
    expect(said('1:1 Spot/20\n1:15 Spot/20\n3:1 Ghost/?\n3:1 Ghost/?')).toHaveLength(3);
    expect(said('1:1 Spot/20\n1:15 Spot/20\n3:1 Spot/16 @Bar.4 !Ona\n3:1 Spot/16 @Bar.5 !focused')).toContain(
      '1 clash stays, held by locked units: Bar · 4 (Ona), Bar · 5 (focused). Unlock them to move them.',
    );
  });

  it('say how many more fit', () => {
    const more = (text: string) => spareSentence('Spot 16', roomFor(rigOf(text), [16]));
    expect(more('2:1 House/448\n5:1 House/496')).toBe('5 more of Spot 16 fit: 4 in universe 2, 1 in universe 5.');
    expect(more('1:1 House/512')).toBe('No more of Spot 16 fit into the universes in use.');
    const many = Array.from({ length: 9 }, (_, at) => `${at + 1}:1 House/496`).join('\n');
    expect(more(many)).toMatch(/ and some in 3 other universes\.$/);
  });
});
