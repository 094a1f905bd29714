import { readdirSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { findPostgres } from '#tests/support/machine.mjs';
import type { StoreKind } from '#tests/support/store.ts';
import type { Proof, ProofOutcome } from './frame/proof.ts';

// `npm run prove` runs every proof of this folder, `npm run prove -- NAME …` those named; `--smoke` briefly.
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    rounds: { type: 'string' },
    seed: { type: 'string', default: '1' },
    store: { type: 'string', default: 'both' },
    smoke: { type: 'boolean', default: false },
  },
});
const folder = new URL('.', import.meta.url);
const names = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && entry.name !== 'run.ts')
  .map((entry) => entry.name.slice(0, -'.ts'.length))
  .sort();
const missing = positionals.filter((name) => !names.includes(name));
if (missing.length > 0) throw new Error(`no such proof: ${missing.join(', ')}; there are ${names.join(', ')}`);

const stores = storesOf(values.store);
const smoke = values.smoke;
let failed = false;
for (const name of positionals.length > 0 ? positionals : names) {
  try {
    const proof: Proof = await import(new URL(`${name}.ts`, folder).href);
    const rounds = values.rounds === undefined ? proof.rounds[smoke ? 'smoke' : 'usual'] : wholeNumber(values.rounds);
    const from = Date.now();
    const outcome = await proof.run({ rounds, seed: wholeNumber(values.seed), stores, smoke });
    for (const fault of outcome.faults.slice(0, 20)) console.error(`${name}: ${fault}`);
    console.log(lineOf(proof, outcome, Date.now() - from));
    failed ||= outcome.faults.length > 0;
  } catch (error) {
    failed = true;
    console.error(`${name} failed:`, error);
  }
}
process.exit(failed ? 1 : 0);

function lineOf({ name, bar }: Proof, { rounds, faults, also }: ProofOutcome, ms: number): string {
  const rest = Object.entries({ ...also, took: `${(ms / 1000).toFixed(1)} s` }).map(
    ([key, value]) => `${key} ${value}`,
  );
  return `${name} rounds=${rounds} faults=${faults.length} bar=${bar} ${faults.length === 0 ? 'ok' : 'short'} (${rest.join('; ')})`;
}

function storesOf(word: string): readonly StoreKind[] {
  if (word === 'embedded' || word === 'postgres') return [word];
  if (word !== 'both') throw new Error(`--store is embedded, postgres or both, not ${word}`);
  // A machine without Postgres proves what it can, and says so.
  if (findPostgres()) return ['embedded', 'postgres'];
  console.error('Postgres was not found on this machine: only the embedded store is tried.');
  return ['embedded'];
}

function wholeNumber(word: string): number {
  const number = Number(word);
  if (!Number.isSafeInteger(number) || number < 0) throw new Error(`not a whole number: ${word}`);
  return number;
}
