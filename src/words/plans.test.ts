import { describe, expect, it } from 'vitest';
import { checkRig } from '#engine/check/check-rig.ts';
import type { Universe } from '#engine/model/address.ts';
import type { Plan } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { clearClash } from '#engine/patch/clear-clash.ts';
import type { PlanRefusal } from '#engine/patch/plan-refusal.ts';
import { addressOf, rigOf } from '#tests/support/rig-shorthand.ts';
import { movesSentence, PLAN_NAMES, planRefusalSentence } from './plans.ts';

const rig = rigOf('1:354 Spot/27 #104 @LX-1.4\n1:374 Spot/27 #105 @LX-1.5\n1:1 Fill/353\n1:401 Full/112');
const fixture = fixtureId('f1');

// A refusal without a row here does not compile.
const REFUSALS: { readonly [Code in PlanRefusal['code']]: Extract<PlanRefusal, { code: Code }> } = {
  'nothing-chosen': { code: 'nothing-chosen' },
  'no-such-fixture': { code: 'no-such-fixture', fixture: fixtureId('gone') },
  'changes-nothing': { code: 'changes-nothing' },
  'not-patched': { code: 'not-patched' },
  'mode-unknown': { code: 'mode-unknown', fixture },
  'too-wide': { code: 'too-wide', fixture, slots: 600 },
  'no-room': { code: 'no-room', fixture, slots: 27 },
  'crosses-end': { code: 'crosses-end', fixture, over: 3 },
  'out-of-range': { code: 'out-of-range', fixture, field: 'channel', value: 0 },
  'bad-number': { code: 'bad-number', value: 0.5 },
  'no-series': { code: 'no-series', field: 'unit' },
  'not-a-clash': { code: 'not-a-clash', rule: 'unpatched' },
  'no-such-mode': { code: 'no-such-mode', mode: 'Wide' },
  'too-many-breaks': { code: 'too-many-breaks', mode: 'Wide', breaks: 5 },
  'mode-too-wide': { code: 'mode-too-wide', mode: 'Wide', slots: 600 },
  locked: { code: 'locked', fixture },
  held: { code: 'held', fixtures: [fixture] },
  'no-reason': { code: 'no-reason' },
  'finding-gone': { code: 'finding-gone' },
  'no-convention': { code: 'no-convention' },
  'no-port-address': { code: 'no-port-address', universe: 40_000 as Universe },
  'no-free-port': { code: 'no-free-port', node: 'Beam' },
  'nothing-unheard': { code: 'nothing-unheard' },
  'no-name': { code: 'no-name' },
  'name-taken': { code: 'name-taken', name: 'A' },
  'not-on-run': { code: 'not-on-run' },
  'no-such-supply': { code: 'no-such-supply' },
  'one-phase': { code: 'one-phase', supply: 'House' },
  'nothing-said': { code: 'nothing-said', of: 'fault' },
  'no-such-card': { code: 'no-such-card', card: 'fault' },
  'no-spare-left': { code: 'no-spare-left', type: 'Spot' },
};

describe('plans in words', () => {
  it('say a move as it stands beside a finding', () => {
    const [finding] = checkRig(rig);
    const plan = finding && clearClash(rig, finding);
    expect(plan?.ok && movesSentence(plan.value, rig)).toBe('move 5 to 2:1');
  });

  it('say moves of several breaks, of several units, and plans that move nothing', () => {
    const set = (id: string, field: 'address' | 'address2' | 'purpose', value: number | string) =>
      ({ kind: 'set-cell', fixture: fixtureId(id), field, value }) as const;
    const sentence = (...edits: Plan['edits']) => movesSentence({ name: 'move', edits }, rig);
    expect(sentence(set('f1', 'address', addressOf('2:1')), set('f1', 'address2', addressOf('2:9')))).toBe(
      'move 4 to 2:1, 2:9',
    );
    expect(sentence(set('f1', 'address', 1), set('f2', 'address', 20))).toBe('move 2 units, the first to 1:1');
    expect(sentence(set('f1', 'purpose', 'front'))).toBe('move addresses');
  });

  it('say each refusal with what to do next', () => {
    for (const refusal of Object.values(REFUSALS)) {
      const sentence = planRefusalSentence(refusal, rig);
      expect(sentence).toMatch(/^[A-Z“0-9].*\.$/);
      expect(sentence).not.toMatch(/undefined|NaN|null/);
    }
    expect(new Set(Object.values(REFUSALS).map((refusal) => planRefusalSentence(refusal, rig))).size).toBe(
      Object.keys(REFUSALS).length,
    );
    expect(planRefusalSentence(REFUSALS['no-room'], rig)).toBe(
      'There is no room of 27 slots left for LX-1 · 4 where you asked. Start from a lower address, or allow more universes.',
    );
  });

  it('name every plan', () => {
    for (const name of Object.values(PLAN_NAMES)) expect(name).toMatch(/^[A-Z][a-z ]+$/);
  });
});
