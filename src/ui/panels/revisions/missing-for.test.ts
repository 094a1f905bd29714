import { expect, test } from 'vitest';
import type { Finding } from '#engine/model/finding.ts';
import { FREEZE_WORDS } from '#words/revisions.ts';
import { type Freezing, missingFor } from './missing-for.ts';

const blocker = (key: string) => ({ key, severity: 'blocker' }) as Finding;
const READY: Freezing = { status: 'saved', blockers: [], ticked: new Set(), by: '' };
const { missing } = FREEZE_WORDS;

test('a saved rig without blockers asks for nothing', () => {
  expect(missingFor(READY)).toBeUndefined();
});

test.each([
  ['saving', missing.unsaved],
  ['opening', missing.unsaved],
  ['on-device', missing.onDevice],
  ['refused', missing.refused],
  [undefined, missing.unsaved],
] as const)('edits that are %s are waited for', (status, said) => {
  expect(missingFor({ ...READY, status })).toBe(said);
});

test('every blocker is accepted by a person who has a name', () => {
  const blockers = [blocker('a'), blocker('b')];
  const both = new Set(['a', 'b']);
  // A blocker that is ticked and gone since says nothing of those that stand.
  expect(missingFor({ ...READY, blockers, ticked: new Set(['a', 'gone']) })).toBe(missing.unticked(1));
  expect(missingFor({ ...READY, blockers, ticked: both, by: '  ' })).toBe(missing.unnamed);
  expect(missingFor({ ...READY, blockers, ticked: both, by: 'Ona Reeve' })).toBeUndefined();
});
