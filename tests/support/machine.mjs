// What a test run needs of the machine: a Chromium and Postgres' own programs. Found where they usually are; installed from
// Debian's packages where that is possible without asking anybody; otherwise one sentence says what is missing.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const CHROMIUM_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Path of a Chromium, or undefined with a sentence on screen. `CHROMIUM_PATH` names one of your own. */
export function findChromium() {
  return find(
    'Chromium',
    () => [process.env.CHROMIUM_PATH, ...CHROMIUM_PLACES, onPath('chromium'), onPath('google-chrome')].find(isThere),
    ['chromium', 'fonts-dejavu-core'],
  );
}

/** Folder with `initdb` and `postgres`, or undefined with a sentence on screen. `POSTGRES_BIN` names one of your own. */
export function findPostgres() {
  return find(
    'Postgres',
    () =>
      [process.env.POSTGRES_BIN, ...debianPostgres(), folderOf(onPath('initdb'))].find(
        (folder) => folder && existsSync(join(folder, 'initdb')),
      ),
    ['postgresql'],
  );
}

function find(what, look, packages) {
  const found = look();
  if (found) return found;
  if (canInstall()) {
    console.log(`== installing ${packages.join(', ')}`);
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    const installed = look();
    if (installed) return installed;
  }
  console.log(
    `${what} was not found: the tests that need it will fail. Install the package ${packages[0]} of your system, then run npm test again.`,
  );
  return undefined;
}

const isThere = (path) => Boolean(path) && existsSync(path);
const canInstall = () => process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
const folderOf = (path) => path?.slice(0, path.lastIndexOf('/'));

function onPath(name) {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find(existsSync);
}

function debianPostgres() {
  const root = '/usr/lib/postgresql';
  if (!existsSync(root)) return [];
  return readdirSync(root)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(root, version, 'bin'));
}
