import type { ProofOutcome, ProofRun } from './frame/proof.ts';
import { checkWalls } from './walls/check-walls.ts';

export const name = 'walls';
export const bar = 'every procedure, address and socket message × everybody: nothing leaks';
export const rounds = { usual: 1, smoke: 1 };

/** Each round is the whole matrix, on each store. A smoke run keeps to the first store. */
export async function run({ rounds, stores, smoke }: ProofRun): Promise<ProofOutcome> {
  const faults: string[] = [];
  let cases = 0;
  for (let round = 0; round < rounds; round++)
    for (const store of smoke ? stores.slice(0, 1) : stores) {
      const findings = await checkWalls(store);
      cases += findings.cases;
      faults.push(...findings.leaks.map((leak) => `${store}: ${leak}`));
    }
  return { rounds, faults, also: { cases } };
}
