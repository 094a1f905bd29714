import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import { killOn } from './kill/one-store.ts';

export const name = 'kill';
export const bar = '0 acknowledged edits lost, over any number of kill -9';
export const rounds = { usual: 50, smoke: 2 };

/** Each round kills a real server process on each store, at a seeded point or moment, under people who edit. */
export async function run({ rounds: tries, seed, stores }: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  const also: Record<string, string | number> = {};
  for (const kind of stores) {
    const outcome = await killOn(kind, { rounds: tries, seed, server: 'honest' });
    faults.push(...outcome.faults);
    also[`${kind}: acknowledged`] = outcome.acknowledged;
    also[`${kind}: killed`] = [...outcome.points].map(([point, times]) => `${times} ${point}`).join(', ');
    if (outcome.acknowledged === 0) faults.push(`${kind}: nothing was acknowledged, so nothing was proved`);
  }
  const hasty = await killOn('embedded', { rounds: 1, seed, server: 'hasty' });
  if (hasty.faults.length === 0) faults.push('a server that acknowledges before it stores was not found out');
  return { rounds: tries, faults, also };
}
