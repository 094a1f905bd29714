import { findPostgres } from '#tests/support/machine.mjs';
import { measureCrowd } from './crowd/measure-crowd.ts';
import { percentile } from './crowd/run-crowd.ts';
import type { Outcome } from './frame/bench.ts';

export const name = 'hot';
export const bar = 'seen p95 ≤ 100 ms';

const ms = (value: number): string => `${value.toFixed(1)} ms`;

/** Two hundred people on one rig, half of them editing every 500 ms. */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const crowd = smoke
    ? { people: 8, writers: 4, editsPerSecond: 8, seconds: 1 }
    : { people: 200, writers: 100, editsPerSecond: 200, seconds: 6 };
  const relay = await measureCrowd('embedded', 'relay', crowd);
  const ours = await measureCrowd(findPostgres() ? 'postgres' : 'embedded', 'sync', crowd);
  const [seen, bare] = [percentile(ours.seen, 0.95), percentile(relay.seen, 0.95)];
  return {
    ratio: seen / bare,
    figure: `seen ${ms(seen)}`,
    baseline: `relay ${ms(bare)}`,
    ok: seen <= 100,
    also: { 'seen p50': ms(percentile(ours.seen, 0.5)), 'acknowledged p95': ms(percentile(ours.acked, 0.95)) },
  };
}
