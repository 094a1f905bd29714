import { findPostgres } from '#tests/support/machine.mjs';
import type { StoreKind } from '#tests/support/store.ts';
import { measureCrowd } from './crowd/measure-crowd.ts';
import { percentile } from './crowd/run-crowd.ts';
import type { Outcome } from './frame/bench.ts';

export const name = 'live';
export const bar = 'seen p95 ≤ 25 ms and ≤ 2.5 × a bare relay; acknowledged p95 ≤ 40 ms';

const ms = (value: number): string => `${value.toFixed(1)} ms`;

/**
 * Fifty people and 250 edits a second on one rig, every edit durable before it is acknowledged. Relay and server are measured in turns,
 * and the median turn counts, as both are a matter of milliseconds and the machine has other things to do.
 */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const crowd = smoke
    ? { people: 6, writers: 6, editsPerSecond: 30, seconds: 1 }
    : { people: 50, writers: 50, editsPerSecond: 250, seconds: 5 };
  const kind: StoreKind = findPostgres() ? 'postgres' : 'embedded';
  const turns = [];
  for (let turn = 0; turn < (smoke ? 1 : 3); turn++)
    turns.push({
      relay: await measureCrowd('embedded', 'relay', crowd),
      ours: await measureCrowd(kind, 'sync', crowd),
    });
  const embedded = await measureCrowd('embedded', 'sync', crowd);
  const single = await measureCrowd(kind, 'one by one', crowd);
  const seen = median(turns.map(({ ours }) => percentile(ours.seen, 0.95)));
  const acked = median(turns.map(({ ours }) => percentile(ours.acked, 0.95)));
  const bare = median(turns.map(({ relay }) => percentile(relay.seen, 0.95)));
  return {
    ratio: seen / bare,
    figure: `seen ${ms(seen)}, acknowledged ${ms(acked)} (${kind})`,
    baseline: `relay ${ms(bare)}`,
    ok: seen <= 25 && seen <= 2.5 * bare && acked <= 40,
    also: {
      'seen p50': ms(median(turns.map(({ ours }) => percentile(ours.seen, 0.5)))),
      'seen p99': ms(median(turns.map(({ ours }) => percentile(ours.seen, 0.99)))),
      'embedded seen p95': ms(percentile(embedded.seen, 0.95)),
      'embedded acknowledged p95': ms(percentile(embedded.acked, 0.95)),
      'one statement per edit, seen p95': ms(percentile(single.seen, 0.95)),
      'one statement per edit, acknowledged p95': ms(percentile(single.acked, 0.95)),
    },
  };
}

const median = (values: readonly number[]): number =>
  percentile(
    [...values].sort((a, b) => a - b),
    0.5,
  );
