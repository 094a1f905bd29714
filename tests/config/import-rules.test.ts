import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** What the linter says of each source as if it stood in the tree at its path. */
function lint(sources: readonly (readonly [path: string, source: string])[]): string[] {
  const root = mkdtempSync(join(tmpdir(), 'rigledger-lint-'));
  try {
    for (const [path, source] of sources) {
      mkdirSync(join(root, dirname(path)), { recursive: true });
      writeFileSync(join(root, path), `${source}\n`);
    }
    const biome = resolve('node_modules/.bin/biome');
    // The globs of the configuration count from where the linter runs, so the scratch tree gets a copy of it.
    const config = 'tests/config/lint.json';
    mkdirSync(join(root, dirname(config)), { recursive: true });
    for (const file of [config, 'tests/config/no-chance.grit']) copyFileSync(file, join(root, file));
    const options = ['--config-path', config, '--reporter=github', '--max-diagnostics=none'];
    const result = spawnSync(biome, ['lint', ...options, '.'], { cwd: root, encoding: 'utf8' });
    const lines = (result.stdout + result.stderr).split('\n');
    return sources.map(([path]) => lines.filter((line) => line.includes(path)).join('\n'));
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

const PLANTED: readonly (readonly [path: string, source: string])[] = [
  ['src/base/planted.ts', "export { checkRig } from '#engine/check/check-rig.ts';"],
  ['src/engine/patch/planted.ts', "export { applyPlan } from '#document/edit/apply-plan.ts';"],
  ['src/engine/patch/planted.ts', "export { Doc } from 'yjs';"],
  ['src/engine/patch/planted.ts', "export { readFileSync } from 'node:fs';"],
  ['src/engine/patch/planted.ts', "export { x } from '../../server/db/sql.ts';"],
  ['src/exchange/csv/planted.ts', "export { applyPlan } from '#document/edit/apply-plan.ts';"],
  ['src/document/edit/planted.ts', "export { x } from '#server/sync/update-log.ts';"],
  ['src/server/api/planted.ts', "export { x } from '#ui/kit/button.tsx';"],
  ['src/server/db/planted.ts', "export { x } from '../api/router.ts';"],
  ['src/server/tasks/planted.ts', "export { x } from '../sync/sync-service.ts';"],
  ['src/ui/grid/planted.ts', "export { x } from '#server/db/sql.ts';"],
  ['app/planted.ts', "export { x } from '#server/db/sql.ts';"],
  ['src/engine/planted.ts', 'export const at = Date.now();'],
  ['src/engine/planted.ts', 'export const luck = Math.random();'],
  ['src/engine/planted.ts', 'export const later = setTimeout;'],
  ['src/engine/planted.ts', 'console.log(1);'],
];

describe('import rules', () => {
  const planted = PLANTED.map(([path, source], n): [string, string] => [
    path.replace('planted', `planted-${n}`),
    source,
  ]);
  const said = lint(planted);

  it.each(planted.map(([path, source], n) => [path, source, said[n]]))(
    'a violation planted in %s is found: %s',
    (_path, _source, words) => {
      expect(words).toMatch(/noRestrictedImports|noRestrictedGlobals|noConsole|Randomness/);
    },
  );

  it('lets through what is allowed', () => {
    const allowed = lint([
      ['src/server/api/allowed.ts', "export { checkRig } from '#engine/check/check-rig.ts';"],
      ['src/ui/grid/allowed.ts', "import type { AppRouter } from '#server/api/router.ts';\nexport type R = AppRouter;"],
      ['src/server/sync/allowed.ts', "export { openStore } from '../db/open-store.ts';"],
      ['src/base/not-allowed.ts', "export { Doc } from 'yjs';"],
    ]);
    expect(allowed.slice(0, 3)).toEqual(['', '', '']);
    expect(allowed[3], 'the linter did look').toContain('noRestrictedImports');
  });
});
