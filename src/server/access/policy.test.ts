import { describe, expect, it } from 'vitest';
import { type Action, may } from './policy.ts';

describe('the policy', () => {
  it('gives an editor all that a reader may, and a lead all that an editor may', () => {
    const actions: readonly Action[] = [
      'crew.read',
      'crew.leave',
      'crew.rename',
      'crew.manage-members',
      'crew.invite',
      'rig.read',
      'rig.write',
      'rig.create',
      'rig.rename',
      'rig.remove',
      'history.read',
      'venue.write',
      'handover.read',
      'handover.offer',
      'proposal.read',
      'proposal.make',
      'proposal.decide',
      'list-mapping.read',
      'list-mapping.write',
      'type.read',
      'type.write',
      'type.remove',
    ];
    for (const action of actions) {
      expect(may('lead', action)).toBe(true);
      if (may('reader', action)) expect(may('editor', action)).toBe(true);
    }
  });

  it('lets a reader change nothing but leave', () => {
    expect(may('reader', 'rig.write')).toBe(false);
    expect(may('reader', 'rig.create')).toBe(false);
    expect(may('reader', 'venue.write')).toBe(false);
    expect(may('reader', 'handover.offer')).toBe(false);
    expect(may('reader', 'proposal.make')).toBe(false);
    expect(may('reader', 'proposal.decide')).toBe(false);
    expect(may('reader', 'list-mapping.write')).toBe(false);
    expect(may('reader', 'type.write')).toBe(false);
    expect(may('reader', 'type.remove')).toBe(false);
    expect(may('reader', 'crew.leave')).toBe(true);
  });
});
