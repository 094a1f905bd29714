// The offline half of the pages. build-service-worker.mjs writes it to public/sw.js with the build's version and files in
// front. Pages and their assets only: what /api and /sync answer is never kept here.
/* global BUILD */

const CACHE = `rigledger-${BUILD.version}`;
// A venue's network may swallow a request without refusing it: after this long, a rig opens from the device.
const PATIENCE_MS = 4000;

self.addEventListener('install', (event) => {
  event.waitUntil(fill());
});

async function fill() {
  const cache = await caches.open(CACHE);
  await cache.addAll(BUILD.files);
  // Asked for as a browser asks for pages, so that each comes with the policy of what may run in it.
  const asPage = { cache: 'reload', headers: { accept: 'text/html' } };
  await cache.addAll(BUILD.pages.map((page) => new Request(page, asPage)));
}

// A newer worker waits until no page of the older build is open, so no page loses assets that it still has to load.
self.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

async function takeOver() {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith('rigledger-') && name !== CACHE).map((name) => caches.delete(name)),
  );
  await self.clients.claim();
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (url.pathname.startsWith('/api/') || url.pathname.startsWith('/sync')) return;
  if (request.mode === 'navigate') event.respondWith(answerPage(request, url.pathname));
  else if (url.pathname.startsWith('/_next/static/')) event.respondWith(answerAsset(request, 'keep'));
  else if (BUILD.files.includes(url.pathname)) event.respondWith(answerAsset(request, 'as-is'));
});

/** The network first, so that a page is never older than its server; the kept page when there is no answer. */
async function answerPage(request, path) {
  const kept = await keptPage(path);
  const fetched = fetch(request).then((response) => (response.status >= 500 && kept.opens ? undefined : response));
  const answer = await Promise.race([fetched.catch(() => undefined), kept.opens ? later(PATIENCE_MS) : never()]);
  return answer ?? kept.response ?? Response.error();
}

/** Any rig opens from one page: it reads which rig from its address. Other pages need the network, and one page says so. */
async function keptPage(path) {
  const shell = /^\/rigs\/[^/]+/.test(path) ? '/rigs/_shell' : path;
  const cache = await caches.open(CACHE);
  const found = await cache.match(shell, { ignoreVary: true });
  if (found) return { opens: true, response: found };
  return { opens: false, response: await cache.match('/offline', { ignoreVary: true }) };
}

/** Assets carry the hash of their content in their name: once here, they are right. */
async function answerAsset(request, then) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept) return kept;
  const response = await fetch(request);
  if (then === 'keep' && response.ok) await cache.put(request, response.clone());
  return response;
}

const later = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

const never = () => new Promise(() => {});
