// Runs after the build of the pages and writes public/sw.js: the worker, with this build's version and files in front.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The pages that open without a network; `_shell` stands for any rig. */
const PAGES = ['/', '/offline', '/rigs/_shell'];
const PUBLIC_FILES = ['/theme.js', '/icon.svg', '/manifest.webmanifest'];

buildServiceWorker(process.cwd());

/** Writes public/sw.js below `root` from the finished build in .next. */
function buildServiceWorker(root) {
  const version = readFileSync(join(root, '.next/BUILD_ID'), 'utf8').trim();
  const assets = filesBelow(join(root, '.next/static')).filter(isNeeded);
  const files = [...assets.map((path) => `/_next/static/${path}`), ...PUBLIC_FILES];
  const worker = readFileSync(fileURLToPath(new URL('./service-worker.js', import.meta.url)), 'utf8');
  const build = JSON.stringify({ version, files, pages: PAGES }, null, 2);
  writeFileSync(join(root, 'public/sw.js'), `const BUILD = ${build};\n\n${worker}`);
}

/** Scripts, styles and the Latin fonts. Other scripts' fonts are kept once a page has asked for them. */
function isNeeded(path) {
  if (/\.(js|css)$/.test(path)) return true;
  return /-latin(-ext)?-[\w-]+\.[^/]*woff2$/.test(path);
}

function filesBelow(folder, prefix = '') {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) =>
      entry.isDirectory()
        ? filesBelow(join(folder, entry.name), `${prefix}${entry.name}/`)
        : [`${prefix}${entry.name}`],
    );
}
