// Keeps the page for when there is no server: all files of one edition, taken at install, given out from then on. The
// build puts the list and the edition in. It never takes over by itself: open tabs would lose the parts they have not
// loaded yet.

/** @type {string[]} paths beside this file, put in by the build */
const files = [];
/** Hash of all files, put in by the build. */
const edition = '';

const PREFIX = 'fitwright-';
const CACHE = PREFIX + edition;
const worker = /** @type {any} */ (globalThis);

worker.addEventListener('install', (/** @type {any} */ event) => {
  const wanted = files.map((file) => new Request(file, { cache: 'no-cache' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(wanted)));
});

async function begin() {
  const kept = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  // The edition before stays: a tab that still runs it may ask for its parts.
  await Promise.all(kept.slice(0, -1).map((name) => caches.delete(name)));
  await worker.clients.claim();
}
worker.addEventListener('activate', (/** @type {any} */ event) => event.waitUntil(begin()));

/** @param {Request} request */
async function answer(request) {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === 'navigate' ? new Request('./') : request;
  return (await cache.match(wanted)) ?? (await caches.match(wanted)) ?? fetch(request);
}
worker.addEventListener('fetch', (/** @type {any} */ event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  event.respondWith(answer(request));
});

worker.addEventListener('message', (/** @type {MessageEvent} */ event) => {
  if (event.data === 'take') worker.skipWaiting();
});
