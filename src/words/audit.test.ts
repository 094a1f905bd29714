import { expect, it } from 'vitest';
import { AUDIT_KINDS } from '#wire/audit.ts';
import { AUDIT_CHOICES, auditSentence } from './audit.ts';

it('says every kind of entry as a sentence, with names and without', () => {
  const full = {
    rig: 'House',
    person: 'Ona',
    role: 'lead',
    was: 'reader',
    crew: 'Crew',
    number: 3,
    sheet: 'patch',
    type: 'Fen',
  };
  for (const kind of AUDIT_KINDS)
    for (const what of [full, {}]) {
      expect(auditSentence(kind, what), kind).toMatch(/^[A-Z].*\.$/);
      expect(auditSentence(kind, what), kind).not.toMatch(/undefined|null/);
    }
});

it('gives every kind a name of its own to choose it by', () => {
  expect(new Set(AUDIT_CHOICES.map(({ label }) => label)).size).toBe(AUDIT_KINDS.length);
});
