import { describe, expect, it } from 'vitest';
import { type Rng, seededRng } from '#base/rng.ts';
import { diffEdits } from '#engine/diff/diff-edits.ts';
import { allLines, type RestoreLine, restoreSheet } from '#engine/diff/restore.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import { removeCard, setCard } from '#engine/model/card-edits.ts';
import { recordOf, type Tick } from '#engine/model/record.ts';
import { EMPTY_RIG, type Rig } from '#engine/model/rig.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { randomEdit, randomRig } from '#tests/support/random-rig.ts';
import { readRig } from '../read/rig-reader.ts';
import { createRigDoc } from '../schema/rig-doc.ts';
import { applyPlan } from './apply-plan.ts';

const SHAPE = { fixtures: 12, universes: 2 };
const HASH = 'd'.repeat(64);
const SEEDS = Array.from({ length: 60 }, (_, seed) => seed);

/** A show that was changed, as a document that some people have open, and the lines of its sheet. */
function scene(seed: number, people: number) {
  const rng = seededRng(seed + 40_000);
  const record = randomRig(seed, SHAPE);
  const show = applyEdits(
    record,
    Array.from({ length: 30 }, () => randomEdit(rng, SHAPE)),
  );
  const made = createRigDoc();
  applyPlan(made, { name: 'edit', edits: diffEdits(diffRigs(EMPTY_RIG, show)) }, 'test');
  const peers = createDocPeers(
    Array.from({ length: people }, (_, nth) => 10 + nth),
    made,
  );
  const bare = readRig(made);
  const before = recordOf(bare.cards).ticks;
  return { rng, record, peers, before, lines: allLines(restoreSheet(bare, record, HASH)) };
}

const ticksOf = (rig: Rig) => recordOf(rig.cards).ticks;

function tickIn(doc: ReturnType<typeof createDocPeers>['docs'][number], line: RestoreLine, tick: Omit<Tick, 'key'>) {
  const applied = applyPlan(doc, { name: 'tick', edits: setCard('tick', line.key, { ...tick }) }, 'me');
  expect(applied.ok).toBe(true);
}

const someState = (rng: Rng) => rng.pick(['done', 'stays'] as const);

describe('ticks of several people', () => {
  it('[RS3] of different lines are all kept, whatever arrives when', () => {
    for (const seed of SEEDS) {
      const { rng, peers, lines, before } = scene(seed, 3);
      const given = new Map(before);
      for (const line of lines) {
        const person = rng.int(3);
        const tick = { state: someState(rng), by: `Person ${person}`, at: `2026-11-25T10:00:0${person}.000Z` };
        const doc = peers.docs[person];
        if (doc !== undefined) tickIn(doc, line, tick);
        given.set(line.key, { key: line.key, ...tick });
        if (rng.int(3) === 0) peers.deliverOne(rng);
      }
      peers.deliverAll();
      for (const doc of peers.docs) expect(ticksOf(readRig(doc)), `seed ${seed}`).toEqual(given);
    }
  });

  it('[RS3] of one line at once leave one of the two, whole, the same for both', () => {
    for (const seed of SEEDS) {
      const { rng, peers, lines } = scene(seed, 2);
      const [one, two] = peers.docs;
      if (one === undefined || two === undefined) throw new Error('two people have it open');
      for (const line of lines) {
        tickIn(one, line, { state: 'done', by: 'Ona', at: '2026-11-25T10:00:00.000Z' });
        tickIn(two, line, { state: 'stays', by: 'Bram', at: '2026-11-25T10:00:01.000Z' });
        peers.deliverAll();
        const ticks = peers.docs.map((doc) => ticksOf(readRig(doc)).get(line.key));
        expect(ticks[0]).toEqual(ticks[1]);
        expect([
          ['done', 'Ona'],
          ['stays', 'Bram'],
        ]).toContainEqual([ticks[0]?.state, ticks[0]?.by]);
        // Whoever takes it back, it is open again for both.
        const doc = rng.pick([one, two]);
        applyPlan(doc, { name: 'tick', edits: removeCard(readRig(doc), 'tick', line.key) }, 'me');
        peers.deliverAll();
        for (const each of peers.docs) expect(ticksOf(readRig(each)).has(line.key)).toBe(false);
      }
    }
  });
});
