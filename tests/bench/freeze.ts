import { deflateSync, inflateSync } from 'node:zlib';
import { freezeRig, thawRig } from '#document/frozen/frozen-rig.ts';
import { diffRigs } from '#engine/diff/rig-diff.ts';
import { findPostgres } from '#tests/support/machine.mjs';
import type { StoreKind } from '#tests/support/store.ts';
import { measureFreezing } from './crowd/measure-crowd.ts';
import { percentile } from './crowd/run-crowd.ts';
import type { Outcome } from './frame/bench.ts';
import { largeRig } from './frame/large-rig.ts';
import { measure, percentile as middleOf, spellTime } from './frame/measure.ts';

export const name = 'freeze';
export const bar = 'edits seen while a rig of 20,000 units is frozen again and again: p95 <= 1.5 x the same without';

const ms = (value: number): string => `${value.toFixed(1)} ms`;

/**
 * Fifty people and 250 edits a second on one rig of 20,000 units, each edit durable before it is acknowledged, with that rig being frozen all the
 * while and without, in turns; the median turn counts.
 */
export async function run({ smoke }: { readonly smoke: boolean }): Promise<Outcome> {
  const units = smoke ? 200 : 20_000;
  const crowd = smoke
    ? { people: 6, writers: 6, editsPerSecond: 30, seconds: 1 }
    : { people: 50, writers: 50, editsPerSecond: 250, seconds: 5 };
  const kind: StoreKind = findPostgres() ? 'postgres' : 'embedded';
  const turns: Record<'without' | 'during', Awaited<ReturnType<typeof measureFreezing>>>[] = [];
  for (let turn = 0; turn < (smoke ? 1 : 3); turn++) {
    const without = await measureFreezing(kind, { units, freezing: false }, crowd);
    const during = await measureFreezing(kind, { units, freezing: true }, crowd);
    if (during.revisions === 0 || without.revisions > 0) throw new Error(`${during.revisions} revisions were frozen`);
    turns.push({ without, during });
  }
  const median = (values: readonly number[]) => middleOf(values, 0.5);
  const p95 = (part: 'seen' | 'acked', of: 'without' | 'during') =>
    median(turns.map((turn) => percentile(turn[of][part], 0.95)));
  const [seen, base] = [p95('seen', 'during'), p95('seen', 'without')];
  return {
    ratio: seen / base,
    figure: `seen ${ms(seen)}, acknowledged ${ms(p95('acked', 'during'))} (${kind})`,
    baseline: `without ${ms(base)}, acknowledged ${ms(p95('acked', 'without'))}`,
    ok: seen <= 1.5 * base,
    also: {
      'revisions frozen meanwhile': median(turns.map(({ during }) => during.revisions)),
      'seen p99 during, without': `${ms(median(turns.map(({ during }) => percentile(during.seen, 0.99))))}, ${ms(median(turns.map(({ without }) => percentile(without.seen, 0.99))))}`,
      ...opened(units, smoke),
    },
  };
}

/** What it takes to write one frozen rig, to open it, and to compare it with another. */
function opened(units: number, smoke: boolean): Record<string, string> {
  const rig = largeRig({ fixtures: units, perUniverse: 25, clashing: 0, seed: 7 });
  const bytes = deflateSync(freezeRig(rig));
  const times = { warmUp: 2, repeats: smoke ? 2 : 10 };
  const thawed = thawRig(inflateSync(bytes).toString('utf8'));
  if (!thawed.ok || diffRigs(rig, thawed.value).fixtures.length > 0) throw new Error('the rig did not come back');
  return {
    'writing one': spellTime(measure(() => deflateSync(freezeRig(rig)), times).median),
    'opening one': spellTime(measure(() => thawRig(inflateSync(bytes).toString('utf8')), times).median),
    'comparing two': spellTime(measure(() => diffRigs(rig, thawed.value), times).median),
    bytes: String(bytes.length),
  };
}
