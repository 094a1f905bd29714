import { expect, it } from 'vitest';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { type Asked, filterOf } from './asked-history.ts';

const unit = (id: string, position: string, number: string) =>
  ({ kind: 'add-fixture', fixture: fixtureId(id), cells: { position, unit: number } }) as const;
const RIG = applyEdits(EMPTY_RIG, [unit('a', 'Bar 1', '4'), unit('b', 'Bar 2', '1'), unit('c', 'Bar 2', '1')]);
const NOTHING: Asked = { unit: '', field: '', person: '', from: '', to: '' };

it('means the unit that is called so, and else whatever was called like it', () => {
  expect(filterOf(RIG, { ...NOTHING, unit: 'bar 1 · 4' })).toMatchObject({ unit: 'a', named: null });
  expect(filterOf(RIG, { ...NOTHING, unit: 'Bar 2 · 1' })).toMatchObject({ unit: null, named: 'Bar 2 · 1' });
  expect(filterOf(RIG, { ...NOTHING, unit: ' Bar ' })).toMatchObject({ unit: null, named: 'Bar' });
  expect(filterOf(RIG, NOTHING)).toEqual({ unit: null, named: null, field: null, person: null, from: null, to: null });
});

it('counts both days in', () => {
  const { from, to } = filterOf(RIG, { ...NOTHING, from: '2026-11-25', to: '2026-11-25' });
  expect(from).toBe(new Date(2026, 10, 25).toISOString());
  expect(to).toBe(new Date(2026, 10, 26).toISOString());
  expect(filterOf(RIG, { ...NOTHING, from: 'x' }).from).toBeNull();
});
