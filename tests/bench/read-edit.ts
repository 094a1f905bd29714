import * as Y from 'yjs';
import { seededRng } from '#base/rng.ts';
import { rowsOf } from '#base/table.ts';
import { readRig, watchRig } from '#document/read/rig-reader.ts';
import { checkRig } from '#engine/check/check-rig.ts';
import { createChecker } from '#engine/check/checker.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, percentile, spellTime } from './frame/measure.ts';
import { documentOf, mustApply } from './frame/rig-document.ts';

export const name = 'read-edit';
export const bar = '<=1.5x: one remote edit to a new rig and its findings, at 20,000 rows against at 500';

/** Two sizes turn and turn about, so that neither has the machine at a better time. */
export function run({ smoke }: { readonly smoke: boolean }): Outcome {
  const rounds = smoke ? 1 : 12;
  const edits = smoke ? 20 : 500;
  const small = openRoom(smoke ? 50 : 500);
  const large = openRoom(smoke ? 200 : 20_000);
  const times = { small: [] as number[], large: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    const [some, many] = [small.receive(edits), large.receive(edits)];
    if (round < 2 && !smoke) continue;
    times.small.push(...some);
    times.large.push(...many);
  }
  small.mustAgree();
  large.mustAgree();
  const [atSmall, atLarge] = [percentile(times.small, 0.5), percentile(times.large, 0.5)];
  const ratio = atLarge / atSmall;
  return {
    ratio,
    figure: spellTime(atLarge),
    baseline: `${spellTime(atSmall)} (at 500 rows)`,
    ok: ratio <= 1.5,
    also: {
      p99: `${spellTime(percentile(times.large, 0.99))} against ${spellTime(percentile(times.small, 0.99))}`,
      'whole reading and check': spellTime(
        measure(() => checkRig(readRig(large.doc)), { warmUp: 1, repeats: 3 }).median,
      ),
    },
  };
}

/** A document that is watched and checked here while a peer edits it there. */
function openRoom(fixtures: number) {
  const doc = documentOf(largeRig({ fixtures, perUniverse: 25, clashing: 0.001, seed: 3 }));
  const peer = new Y.Doc();
  Y.applyUpdate(peer, Y.encodeStateAsUpdate(doc));
  const rows = [...rowsOf(readRig(doc).fixtures)];
  const reader = watchRig(doc);
  const checker = createChecker(reader.rig());
  reader.onChange(({ after }) => checker.update(after));
  const updates: Uint8Array[] = [];
  peer.on('update', (update) => updates.push(update));
  const rng = seededRng(fixtures);
  // A row moves up by a slot, into its neighbour, and back: the rig stays as full as it was, however many edits are made.
  const edit = (): Edit => {
    const { id: fixture, addresses } = rng.pick(rows);
    return rng.int(2) === 0
      ? { kind: 'set-cell', fixture, field: 'address', value: (addresses[0] ?? 1) + rng.int(2) }
      : { kind: 'set-cell', fixture, field: 'purpose', value: `Purpose ${rng.int(1000)}` };
  };
  return {
    doc,
    /** Takes in this many edits of the peer, one by one; milliseconds of each. */
    receive(count: number): number[] {
      updates.length = 0;
      for (let n = 0; n < count; n++) mustApply(peer, { name: 'edit', edits: [edit()] });
      return updates.map((update) => {
        const from = performance.now();
        Y.applyUpdate(doc, update, 'network');
        return performance.now() - from;
      });
    },
    mustAgree() {
      const wanted = checkRig(readRig(peer)).map((finding) => finding.key);
      const found = checker.findings().map((finding) => finding.key);
      if (JSON.stringify(found) !== JSON.stringify(wanted))
        throw new Error(`${found.length} findings, not ${wanted.length}`);
    },
  };
}
