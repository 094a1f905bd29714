import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { getRow, rowsOf } from '#base/table.ts';
import { occupancyOf, universesInUse } from '#engine/address/occupancy.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { recordOf } from '#engine/model/record.ts';
import { EMPTY_RIG } from '#engine/model/rig.ts';
import { universeRoutes } from '#engine/network/universe-routes.ts';
import { matchModes, takeTypePlan } from '#engine/patch/take-type-plan.ts';
import { universeSlots } from '#engine/sheet/universe-slots.ts';
import { unitName } from '#words/findings.ts';
import { demoPlan } from './demo-rig.ts';
import { demoRevisions } from './types/demo-types.ts';

const library = await demoRevisions(async (text) => createHash('sha256').update(text, 'utf8').digest('hex'));
const newest = new Map(library.map((revision) => [revision.typeId, revision]));
const rig = applyEdits(EMPTY_RIG, demoPlan(library).edits);

const tally = (findings: ReturnType<typeof checkRig>) => {
  const counts: Record<string, number> = {};
  for (const { rule } of findings) counts[rule] = (counts[rule] ?? 0) + 1;
  return counts;
};

describe('the demo rig', () => {
  it('has the findings that a real week leaves behind, and no unit that nobody has a chart for', () => {
    expect(tally(checkRig(rig, newest))).toEqual({
      'slots-claimed-twice': 1,
      'past-the-end': 1,
      unpatched: 1,
      'channel-on-unlike': 1,
      'same-place': 1,
      'circuit-crowded': 1,
      'fault-open': 1,
      'firmware-mode': 1,
      'hazard-unsigned': 1,
      'acting-as-one': 1,
      'channel-shared': 1,
      'firmware-wanted': 1,
      'lines-unbalanced': 1,
      'library-differs': 1,
      'run-end-unsaid': 1,
    });
  });

  it('keeps a record whose every unit, position and type is of the rig', () => {
    const record = recordOf(rig.cards);
    const upkeep = [...record.faults, ...record.swaps, ...record.readings];
    for (const { unit, called } of upkeep) expect(unitName(getRow(rig.fixtures, unit))).toBe(called);
    for (const key of record.places.keys()) expect(getRow(rig.positions, key), key).toBeDefined();
    const types = new Set([...rowsOf(rig.modes)].map(({ type }) => type));
    for (const { type } of record.spares) expect(types).toContain(type);
    expect(record.faults.map(({ state }) => state).sort()).toEqual(['mended', 'open']);
  });

  it('brings every universe out of one port, under its own number', () => {
    const routes = universeRoutes(rig, universesInUse(rig));
    const said = routes.map(({ universe, delivery, outlets }) => [universe, delivery?.by, outlets.length].join(' '));
    expect(said).toEqual(['1 sacn 1', '2 sacn 1', '3 sacn 1', '4 art-net 1']);
  });

  it('names every slot of every universe', () => {
    const universes = universesInUse(rig);
    expect(universes).toEqual([1, 2, 3, 4]);
    expect([...rowsOf(rig.universes)].map(({ universe }) => universe).sort()).toEqual([1, 2, 3, 4]);
    const users = universes.flatMap((universe) =>
      universeSlots(rig, occupancyOf(rig, universe)).flatMap((slot) => slot.users),
    );
    expect(users.length).toBeGreaterThan(1500);
    const unnamed = users.filter(({ uses }) => uses?.length !== 1 || uses[0]?.attribute === '');
    expect(unnamed.map(({ fixture, part, own }) => `${fixture.id} ${part}/${own}`)).toEqual([]);
  });

  it('can take the newer revision of its spot, whose longer mode then clashes along Bar 1', () => {
    const revision = newest.get('demo-halyard');
    if (revision === undefined) throw new Error('no demo-halyard');
    const type = 'Stoat & Ravel Halyard spot';
    const modes = matchModes(rig, type, revision).map(({ mode, is }) => ({ mode, is: is ?? '' }));
    const plan = takeTypePlan(rig, { type, revision, modes });
    if (!plan.ok) throw new Error(JSON.stringify(plan.error));
    const after = tally(checkRig(applyEdits(rig, plan.value.edits), newest));
    expect(after['library-differs']).toBeUndefined();
    expect(after['slots-claimed-twice']).toBeGreaterThan(5);
  });
});
