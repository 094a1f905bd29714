import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { createOccupancy } from '#engine/address/occupancy-index.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { createChecker } from '#engine/check/checker.ts';
import { absolute, SLOTS, slotOf, universeOf } from '#engine/model/address.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { clearClash } from '#engine/patch/clear-clash.ts';
import type { RepairOptions } from '#engine/patch/repair/repair-options.ts';
import { type Repair, repairPlan } from '#engine/patch/repair/repair-plan.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, spellTime } from './frame/measure.ts';

export const name = 'repair';
export const bar = 'cheaper than clash by clash and no more units moved, at 2,000 fixtures of which 5% clash';

/** What moving a unit costs on top when it is set already, as every second one is. */
const SET_COST = 3;

/**
 * Clears a rig of all its clashes at once, and one clash after another as a person would with the plan beside each finding;
 * both must leave no clash. One fixture in twenty was pushed onto its neighbours. Once every unit costs the same to move, once
 * every second is set already. Ratio: cost of clash by clash against the one plan, where some are set.
 */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const rig = pushedRig(smoke ? 200 : 2000);
  const alreadySet = new Set([...rowsOf(rig.fixtures)].filter(isSet).map(({ id }) => id));
  const options = { alreadySet, setCost: SET_COST };
  const alike = mustRepair(rig, {});
  const dear = mustRepair(rig, options);
  const single = clashByClash(rig);
  mustBeClear(single.rig);
  const costOfMoves = (moved: ReadonlySet<FixtureId>) =>
    [...moved].reduce((total, id) => total + 1 + (alreadySet.has(id) ? SET_COST : 0), 0);
  const repeats = smoke ? 1 : 5;
  const together = measure(() => repairPlan(rig, options), { warmUp: repeats, repeats });
  const oneByOne = measure(() => clashByClash(rig), { warmUp: 1, repeats });
  const units = movedBy(alike.plan.edits).size;
  const ratio = costOfMoves(single.moved) / dear.cost;
  return {
    ratio,
    figure: `cost ${dear.cost} (${movedBy(dear.plan.edits).size} units), ${spellTime(together.median)}`,
    baseline: `cost ${costOfMoves(single.moved)} (${single.moved.size} units, ${single.steps} plans), ${spellTime(oneByOne.median)}`,
    ok: ratio > 1 && units <= single.moved.size && dear.isLeast && alike.isLeast,
    also: {
      clashes: checkRig(rig).filter(isClash).length,
      'units where all cost the same': `${units} against ${single.moved.size}`,
      'time against clash by clash': `${(oneByOne.median / together.median).toPrecision(3)}x`,
    },
  };
}

const isSet = ({ channel }: Fixture) => (channel ?? 0) % 2 === 0;

/** A large rig without clashes, of which one fixture in twenty was pushed up by up to 40 slots within its universe. */
function pushedRig(fixtures: number): Rig {
  const rng = seededRng(9);
  const rig = largeRig({ fixtures, perUniverse: 25, clashing: 0, seed: 7 });
  const edits = [...rowsOf(rig.fixtures)].flatMap((fixture): Edit[] => {
    const [start] = fixture.addresses;
    if (rng.int(20) > 0 || start === null || start === undefined) return [];
    const value = absolute(universeOf(start), Math.min(SLOTS, slotOf(start) + 1 + rng.int(40)));
    return [{ kind: 'set-cell', fixture: fixture.id, field: 'address', value }];
  });
  return applyEdits(rig, edits);
}

function mustRepair(rig: Rig, options: Partial<RepairOptions>): Repair {
  const repair = repairPlan(rig, options);
  if (!repair.ok) throw new Error(`no repair: ${repair.error.code}`);
  mustBeClear(applyEdits(rig, repair.value.plan.edits));
  return repair.value;
}

const isClash = ({ rule }: Finding) => rule === 'slots-claimed-twice' || rule === 'past-the-end';

function mustBeClear(rig: Rig): void {
  const left = checkRig(rig).filter(isClash).length;
  if (left > 0) throw new Error(`${left} clashes are left`);
}

const movedBy = (edits: readonly Edit[]): Set<FixtureId> =>
  new Set(edits.flatMap((edit) => (edit.kind === 'set-cell' ? [edit.fixture] : [])));

interface Single {
  readonly rig: Rig;
  readonly moved: ReadonlySet<FixtureId>;
  readonly steps: number;
}

/** Clears the first clash there is until there is none, with a checker and an index that follow each step. */
function clashByClash(start: Rig): Single {
  let rig = start;
  const checker = createChecker(rig);
  const index = createOccupancy(rig);
  const moved = new Set<FixtureId>();
  for (let steps = 0; ; steps++) {
    const finding = checker.findings().find(isClash);
    if (finding === undefined) return { rig, moved, steps };
    const plan = clearClash(rig, finding, index);
    if (!plan.ok) throw new Error(`${finding.key}: ${plan.error.code}`);
    for (const id of movedBy(plan.value.edits)) moved.add(id);
    rig = applyEdits(rig, plan.value.edits);
    checker.update(rig);
    index.update(rig);
  }
}
