// `npm test`: installs what it needs, then runs every check and test there is, and closes with one line of counts.
// Plain JavaScript without dependencies, because on a fresh clone nothing is installed yet.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildAll, installPackages, requireNode } from '../src/server/set-up.mjs';
import { findChromium, findPostgres } from './support/machine.mjs';

const scratch = mkdtempSync(join(tmpdir(), 'rigledger-test-'));
const vitestReport = join(scratch, 'vitest.json');
const playwrightReport = join(scratch, 'playwright.json');
const only = process.argv.slice(2);
const totals = { passed: 0, failed: 0, skipped: 0 };

requireNode();
installPackages();
const chromium = findChromium();
const postgres = findPostgres();

const bin = (name) => join('node_modules', '.bin', name);
const steps = [
  {
    name: 'lint',
    run: () => run(bin('biome'), ['check', '--config-path', 'tests/config/lint.json', '--error-on-warnings']),
  },
  { name: 'types', run: () => run(bin('tsc'), ['--noEmit']) },
  { name: 'unused', run: () => run(bin('knip'), ['--config', 'tests/config/knip.json']) },
  {
    name: 'unit',
    run: () =>
      run(bin('vitest'), [
        'run',
        '--config',
        'tests/config/vitest.config.ts',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${vitestReport}`,
      ]),
    count: () => countVitest(vitestReport),
  },
  { name: 'bench', run: () => run('npm', ['run', '--silent', 'bench', '--', '--smoke']) },
  { name: 'prove', run: () => run('npm', ['run', '--silent', 'prove', '--', '--smoke']) },
  {
    name: 'browser',
    run: () => run(bin('playwright'), ['test', '--config', 'tests/config/playwright.config.ts']),
    count: () => countPlaywright(playwrightReport),
  },
].filter((step) => only.length === 0 || only.includes(step.name));

buildAll();
for (const step of steps) {
  const from = Date.now();
  console.log(`\n== ${step.name}`);
  const passed = step.run();
  const counts = step.count?.() ?? { passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 };
  if (!passed && counts.failed === 0) counts.failed = 1;
  for (const key of Object.keys(totals)) totals[key] += counts[key];
  console.log(`== ${step.name}: ${passed ? 'passed' : 'FAILED'} in ${Math.round((Date.now() - from) / 1000)} s`);
}

const failed = [...failedOfVitest(vitestReport), ...failedOfPlaywright(playwrightReport)];
// Said again at the end, where somebody who reads only the last lines finds it.
if (failed.length > 0) console.log(`\nFailed:\n${failed.map((name) => `- ${name}`).join('\n')}`);
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${totals.passed} passed, ${totals.failed} failed, ${totals.skipped} skipped`);
const skippedInCi = process.env.CI === 'true' && totals.skipped > 0;
if (skippedInCi) console.log('Nothing may be skipped in CI.');
process.exit(totals.failed > 0 || skippedInCi ? 1 : 0);

function run(command, parameters) {
  const result = spawnSync(command, parameters, {
    stdio: 'inherit',
    env: {
      ...process.env,
      NEXT_TELEMETRY_DISABLED: '1',
      CHROMIUM_PATH: chromium ?? '',
      POSTGRES_BIN: postgres ?? '',
      PLAYWRIGHT_JSON_OUTPUT_NAME: playwrightReport,
    },
  });
  return result.status === 0;
}

function countVitest(file) {
  if (!existsSync(file)) return { passed: 0, failed: 1, skipped: 0 };
  const report = JSON.parse(readFileSync(file, 'utf8'));
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + report.numFailedTestSuites * (report.numFailedTests === 0 ? 1 : 0),
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

function countPlaywright(file) {
  if (!existsSync(file)) return { passed: 0, failed: 1, skipped: 0 };
  const { expected, unexpected, flaky, skipped } = JSON.parse(readFileSync(file, 'utf8')).stats;
  return { passed: expected, failed: unexpected + flaky, skipped };
}

function failedOfVitest(file) {
  if (!existsSync(file)) return [];
  return JSON.parse(readFileSync(file, 'utf8')).testResults.flatMap(({ name, status, message, assertionResults }) => {
    const tests = assertionResults.filter((one) => one.status === 'failed');
    if (tests.length === 0) return status === 'failed' ? [`${name}: ${message}`] : [];
    return tests.map((one) => `${name}: ${one.fullName}: ${one.failureMessages[0]?.split('\n')[0] ?? ''}`);
  });
}

function failedOfPlaywright(file) {
  if (!existsSync(file)) return [];
  const specsOf = (suite) => [...(suite.specs ?? []), ...(suite.suites ?? []).flatMap(specsOf)];
  const specs = JSON.parse(readFileSync(file, 'utf8')).suites.flatMap(specsOf);
  return specs.filter((spec) => !spec.ok).map((spec) => `${spec.file}: ${spec.title}`);
}
