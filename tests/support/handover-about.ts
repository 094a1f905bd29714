import { createHash } from 'node:crypto';
import type { HandoverAbout } from '#engine/handover/handover-about.ts';

/** What a file of the frozen rig `text` says of itself. */
export const handoverAbout = (text: string, changed: Partial<HandoverAbout> = {}): HandoverAbout => ({
  from: { crewId: 'crew1', crewName: 'Lampwrights', by: 'Gil' },
  writtenAt: '2026-11-25T20:00:00.000Z',
  words: 'The dimmer at 12 sticks.',
  rig: { id: 'rig1', name: 'Winter show', kind: 'show', venueName: null },
  revision: {
    number: 3,
    hash: createHash('sha256').update(text, 'utf8').digest('hex'),
    note: 'As hung',
    by: 'Gil',
    at: '2026-11-25T19:00:00.000Z',
    units: 0,
    counts: { blocker: 0, caution: 0, note: 0 },
    accepted: [],
  },
  startedFrom: null,
  ...changed,
});
