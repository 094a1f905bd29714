import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import { checkRevoke } from './revoke/check-revoke.ts';

export const name = 'revoke';
export const bar = 'rights ended → sockets closed and writes refused within 1 s';
export const rounds = { usual: 5, smoke: 1 };

const BAR_MS = 1_000;

/** Each round ends rights in every way there is, with real sockets open and writing, on each store. */
export async function run({ rounds, stores }: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  let longest = 0;
  for (let round = 0; round < rounds; round++)
    for (const store of stores)
      for (const { name, ms, leaks } of await checkRevoke(store)) {
        longest = Math.max(longest, ms);
        faults.push(...leaks.map((leak) => `${store}: ${leak}`));
        if (ms > BAR_MS) faults.push(`${store}: ${name} took ${Math.round(ms)} ms`);
      }
  return { rounds, faults, also: { longest: `${Math.round(longest)} ms` } };
}
