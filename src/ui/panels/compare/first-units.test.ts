import { expect, test } from 'vitest';
import { groupTasks } from '#engine/diff/task-groups.ts';
import { tasksOf } from '#engine/diff/tasks.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { countKinds } from './count-kinds.ts';
import { firstUnits } from './first-units.ts';

const tasks = tasksOf(
  EMPTY_RIG,
  applyEdits(
    EMPTY_RIG,
    ['A 1', 'A 2', 'B 1', 'B 2', 'B 3'].map((name) => ({
      kind: 'add-fixture',
      fixture: fixtureId(name.replace(' ', '')),
      cells: { position: name.slice(0, 1), unit: name.slice(2), type: 'Spot' },
    })),
  ),
);
const { places } = groupTasks(tasks);

test.each([
  [0, []],
  [1, ['A: 1']],
  [2, ['A: 1 2']],
  [4, ['A: 1 2', 'B: 1 2']],
  [9, ['A: 1 2', 'B: 1 2 3']],
])('the first %i units stand with their positions', (count, shown) => {
  const said = firstUnits(places, count).map(
    ({ position, units }) => `${position}: ${units.map(({ unit }) => unit.unit).join(' ')}`,
  );
  expect(said).toEqual(shown);
});

test('kinds that occur are counted, and no others', () => {
  expect([...countKinds(tasks)]).toEqual([['hang', 5]]);
});
