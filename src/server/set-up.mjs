// What `npm start` and `npm test` do first: the right Node, the packages of the lock file, the generated client, the build. Each is
// done again only when what it comes from has changed. Plain JavaScript without dependencies: on a fresh clone there are none.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const NEEDED_NODE = [20, 19];

/** Ends the process with one sentence when this Node is too old. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > NEEDED_NODE[0] || (major === NEEDED_NODE[0] && minor >= NEEDED_NODE[1])) return;
  stop(
    `Rigledger needs Node ${NEEDED_NODE.join('.')} or newer; this is ${process.versions.node}. Install a newer Node and start again.`,
  );
}

export function installPackages() {
  once('node_modules/.installed', hashOf(['package-lock.json']), () => {
    say('Installing packages (once)');
    run(
      'npm',
      ['ci', '--include=dev', '--no-audit', '--no-fund'],
      'The packages could not be installed. Is the npm registry within reach?',
    );
  });
}

/** The database client of prisma/schema.prisma. */
export function generateClient() {
  once('src/server/db/generated/.generated', hashOf(['prisma', 'package-lock.json']), () => {
    say('Generating the database client');
    // Generating needs no engine, and must not try to fetch one.
    run('node', ['node_modules/prisma/build/index.js', 'generate'], 'The database client could not be generated.', {
      PRISMA_SCHEMA_ENGINE_BINARY: '/bin/true',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
    });
  });
}

/** The pages and the server process. */
export function buildAll() {
  generateClient();
  const sources = [
    'app',
    'src',
    'public',
    'prisma',
    'package-lock.json',
    'next.config.ts',
    'postcss.config.mjs',
    'tsconfig.json',
  ];
  once('dist/.built', hashOf(sources), () => {
    say('Building (about a minute, once)');
    run('node', ['node_modules/next/dist/bin/next', 'build'], 'The pages could not be built.');
    run('node', ['src/ui/live/offline/build-service-worker.mjs'], 'The service worker could not be built.');
    bundleServer();
  });
}

// By its API: the file in its bin folder is a script or a program, depending on how it was installed.
function bundleServer() {
  const { buildSync } = createRequire(import.meta.url)('esbuild');
  try {
    buildSync({
      // What takes long is done in threads, which start from bundles of their own.
      entryPoints: {
        server: 'src/server/main.ts',
        'gdtf-worker': 'src/server/gdtf/gdtf-worker.ts',
        'record-worker': 'src/server/record/record-worker.ts',
        'handover-worker': 'src/server/handover/handover-worker.ts',
      },
      outdir: 'dist',
      outExtension: { '.js': '.mjs' },
      bundle: true,
      platform: 'node',
      format: 'esm',
      target: 'node20',
      packages: 'external',
      sourcemap: true,
      logLevel: 'warning',
    });
  } catch (error) {
    stop(`The server could not be built: ${error.message}`);
  }
}

function once(stamp, hash, work) {
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  // Work that fails half-way leaves neither the old state nor the new one.
  rmSync(stamp, { force: true });
  work();
  mkdirSync(join(stamp, '..'), { recursive: true });
  writeFileSync(stamp, hash);
}

/** One hash of the contents of files and folders, tests and generated files left out. */
function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths.flatMap(filesBelow)) hash.update(path).update('\0').update(readFileSync(path)).update('\0');
  return hash.digest('hex');
}

function filesBelow(path) {
  if (!existsSync(path)) return [];
  try {
    const entries = readdirSync(path).sort();
    return entries
      .filter((name) => name !== 'generated' && !/\.test\.tsx?$|^sw\.js$/.test(name))
      .flatMap((name) => filesBelow(join(path, name)));
  } catch (error) {
    if (error.code === 'ENOTDIR') return [path];
    throw error;
  }
}

function run(command, parameters, onFailure, env = {}) {
  const result = spawnSync(command, parameters, {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
  });
  if (result.status !== 0) stop(onFailure);
}

function say(text) {
  console.log(`== ${text}`);
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}
