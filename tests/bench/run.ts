import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import type { Bench, Outcome } from './frame/bench.ts';

// `npm run bench` runs every bench of this folder, `npm run bench -- NAME …` those named; `--smoke` at tiny sizes.
const folder = new URL('.', import.meta.url);
const report = new URL('latest.json', folder);
const words = process.argv.slice(2);
const smoke = words.includes('--smoke');
const wanted = words.filter((word) => !word.startsWith('--'));

const names = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts') && entry.name !== 'run.ts')
  .map((entry) => entry.name.slice(0, -'.ts'.length))
  .sort();
const missing = wanted.filter((name) => !names.includes(name));
if (missing.length > 0) throw new Error(`no such bench: ${missing.join(', ')}; there are ${names.join(', ')}`);

let failed = false;
for (const name of wanted.length > 0 ? wanted : names) {
  try {
    const bench: Bench = await import(new URL(`${name}.ts`, folder).href);
    const outcome = await bench.run({ smoke });
    console.log(lineOf(bench, outcome));
    if (!smoke) keep(bench, outcome);
  } catch (error) {
    failed = true;
    console.error(`${name} failed:`, error);
  }
}
process.exit(failed ? 1 : 0);

function lineOf({ name, bar }: Bench, { ratio, figure, baseline, ok, also }: Outcome): string {
  const verdict = smoke ? 'smoke' : ok ? 'ok' : 'short';
  const rest = Object.entries(also ?? {}).map(([key, value]) => `${key} ${value}`);
  const line = `${name} ratio=${spellRatio(ratio)} figure=${figure} baseline=${baseline} bar=${bar} ${verdict}`;
  return rest.length === 0 ? line : `${line} (${rest.join('; ')})`;
}

function spellRatio(ratio: number): string {
  return ratio >= 100 ? String(Math.round(ratio)) : ratio.toPrecision(3);
}

function keep({ name, bar }: Bench, outcome: Outcome): void {
  const kept = readReport();
  const machine = `${cpus().length} × ${cpus()[0]?.model.trim() ?? 'processor'}, Node ${process.versions.node}`;
  kept[name] = { ...outcome, bar, machine, at: new Date().toISOString() };
  const sorted = Object.fromEntries(Object.entries(kept).sort(([a], [b]) => (a < b ? -1 : 1)));
  writeFileSync(report, `${JSON.stringify(sorted, null, 2)}\n`);
}

function readReport(): Record<string, unknown> {
  try {
    return JSON.parse(readFileSync(report, 'utf8'));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return {};
    throw error;
  }
}
