import { describe, expect, it } from 'vitest';
import { seededRng } from '#base/rng.ts';
import { rowsOf, tableOf } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { modeOf } from '#engine/model/find-mode.ts';
import { isLocked } from '#engine/model/locked.ts';
import type { Rig } from '#engine/model/rig.ts';
import { runChain } from '#engine/network/runs/run-chain.ts';
import { allocatePlan } from '#engine/patch/allocate/allocate-plan.ts';
import { lockPlan, unlockPlan } from '#engine/patch/lock-plan.ts';
import { repairPlan } from '#engine/patch/repair/repair-plan.ts';
import { moveOnRun, putOnRun, takeOffRun } from '#engine/patch/runs/chain-plans.ts';
import { addSplitter, removeRun, renameRun } from '#engine/patch/runs/run-plans.ts';
import { documentOf } from '#tests/bench/frame/rig-document.ts';
import { someOf } from '#tests/support/planned.ts';
import { randomCardEdit } from '#tests/support/random-card.ts';
import { listRig } from '#tests/support/random-plan.ts';
import { randomRig } from '#tests/support/random-rig.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { readRig } from '../read/rig-reader.ts';
import { createHistory } from './history.ts';

/** Without the modes that no document holds: units set to them are then of unknown mode. */
const storable = (rig: Rig): Rig => ({
  ...rig,
  modes: tableOf([...rowsOf(rig.modes)].filter(({ footprints }) => footprints.every((slots) => slots <= 512))),
});

describe('undo of plans that move many', () => {
  it('[DO30] takes an allocation or a repair of a rig with locks back, and the rig is exactly what it was', () => {
    const done = { allocate: 0, repair: 0 };
    for (let seed = 1; seed <= 120; seed++) {
      const rng = seededRng(seed);
      const doc = documentOf(storable(randomRig(seed, { fixtures: 30, universes: 3 })));
      const history = createHistory(doc, 'me');
      const before = readRig(doc);
      const some = [...rowsOf(before.fixtures)]
        .filter((row) => modeOf(before, row) && rng.int(2) === 0)
        .map(({ id }) => id);
      const together = rng.pick(['as-fits', 'by-position', 'in-order'] as const);
      const made =
        seed % 2 === 0
          ? repairPlan(before)
          : allocatePlan(before, some, { together, breaks: 'anywhere', steps: 10_000 });
      if (!made.ok) continue;
      const { plan } = made.value;
      expect(applyPlan(doc, plan, 'me')).toEqual({ ok: true, value: undefined });
      expect(listRig(readRig(doc)), `seed ${seed}`).toEqual(listRig(applyEdits(before, plan.edits)));
      expect(history.undo()).toBe(plan.name);
      expect(listRig(readRig(doc)), `seed ${seed}`).toEqual(listRig(before));
      done[seed % 2 === 0 ? 'repair' : 'allocate'] += 1;
    }
    expect(done.repair).toBeGreaterThan(40);
    expect(done.allocate).toBeGreaterThan(20);
  });

  it('[DO30] [LK4] takes locking and unlocking back, reasons and all', () => {
    let done = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const doc = documentOf(storable(randomRig(seed, { fixtures: 12, universes: 2 })));
      const history = createHistory(doc, 'me');
      const before = readRig(doc);
      const some = [...rowsOf(before.fixtures)].filter((_, at) => at % 2 === 0).map(({ id }) => id);
      const made = seed % 2 === 0 ? lockPlan(before, some, 'Tomas') : unlockPlan(before, some);
      if (!made.ok) continue;
      applyPlan(doc, made.value, 'me');
      const locked = [...rowsOf(readRig(doc).fixtures)].filter(({ id }) => some.includes(id)).map(isLocked);
      expect(new Set(locked), `seed ${seed}`).toEqual(new Set([seed % 2 === 0]));
      expect(history.undo()).toBe('lock');
      expect(listRig(readRig(doc)), `seed ${seed}`).toEqual(listRig(before));
      done += 1;
    }
    expect(done).toBeGreaterThan(40);
  });

  it('[DO30] takes a change of a run back', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rng = seededRng(seed);
      const cards = Array.from({ length: 40 }, () => randomCardEdit(rng, ['run', 'splitter']));
      const doc = documentOf(applyEdits(storable(randomRig(seed, { fixtures: 20, universes: 2 })), cards));
      const history = createHistory(doc, 'me');
      const before = readRig(doc);
      const fixtures = someOf(rng, before);
      const [id = ''] = runChain(before, 'front').map((link) => link.id);
      const plans = [
        putOnRun(before, { run: 'Front', fixtures, order: 'given', after: id }),
        moveOnRun(before, { run: 'front', id, step: 1 }),
        takeOffRun(before, fixtures),
        renameRun(before, 'front', 'Else'),
        removeRun(before, 'front'),
        addSplitter(before, { id: 'new', name: 'New', run: 'back', outputs: 2 }),
      ];
      for (const plan of plans) {
        if (!plan.ok) continue;
        expect(applyPlan(doc, plan.value, 'me')).toEqual({ ok: true, value: undefined });
        expect(listRig(readRig(doc)), `seed ${seed}`).toEqual(listRig(applyEdits(before, plan.value.edits)));
        expect(history.undo()).toBe('set-run');
        expect(listRig(readRig(doc)), `seed ${seed}`).toEqual(listRig(before));
      }
    }
  });
});
