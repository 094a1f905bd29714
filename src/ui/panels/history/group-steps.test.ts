import { expect, it } from 'vitest';
import type { HistoryStep } from '#wire/history.ts';
import { groupSteps } from './group-steps.ts';

/** `ona 2026-11-25T14:02` */
const step = (text: string, nth: number): HistoryStep => {
  const [by = '', at = ''] = text.split(' ');
  return { seq: 100 - nth, by, byName: by, at: `${at}:00.000Z`, counts: [], total: 1, changes: [] };
};

it('groups steps by day, and by who did them without a pause', () => {
  const steps = [
    'tam 2026-11-26T09:00',
    'ona 2026-11-25T15:00',
    'ona 2026-11-25T14:10',
    'ona 2026-11-25T14:02',
    'tam 2026-11-25T14:01',
    'ona 2026-11-25T14:00',
  ].map(step);
  const days = groupSteps(steps, (iso) => iso.slice(0, 10));
  expect(
    days.map(({ day, stretches }) => [day, ...stretches.map((each) => `${each.by} ${each.steps.length}`)]),
  ).toEqual([
    ['2026-11-26', 'tam 1'],
    ['2026-11-25', 'ona 1', 'ona 2', 'tam 1', 'ona 1'],
  ]);
  expect(days[1]?.stretches[1]).toMatchObject({ from: '2026-11-25T14:02:00.000Z', to: '2026-11-25T14:10:00.000Z' });
  expect(groupSteps([], () => '')).toEqual([]);
});
