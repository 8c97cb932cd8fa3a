// Keeps the whole page for use without a signal. Each version has its own store
// and is served from it alone, so two versions never mix.
'use strict';
const VERSION = "unbuilt";
const FILES = [];
// Fetched when they are first needed, and kept from then on.
const LATER = [];

const keepLater = async () => {
  const store = await caches.open(VERSION);
  for (const f of LATER) if (!await store.match(f)) await store.add(f);
};

// Tells whether any version has kept what comes later.
const hasLater = async () => {
  for (const name of await caches.keys()) {
    if (!name.startsWith('leafwright-')) continue;
    const kept = await (await caches.open(name)).keys();
    if (kept.some(r => r.url.endsWith('.wasm') && r.url.includes('/clerk.'))) return true;
  }
  return false;
};

self.addEventListener('install', e => e.waitUntil((async () => {
  const store = await caches.open(VERSION);
  await store.addAll(FILES.map(f => new Request(f, { cache: 'no-cache' })));
  if (await hasLater()) await keepLater();
})()));

self.addEventListener('activate', e => e.waitUntil((async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith('leafwright-') && name !== VERSION) await caches.delete(name);
  }
  await self.clients.claim();
})()));

// A new version waits until it is asked for.
self.addEventListener('message', e => {
  if (e.data === 'take over') self.skipWaiting();
  if (e.data === 'keep the rest') e.waitUntil(keepLater().catch(() => { /* no signal: it is fetched again when needed */ }));
});

self.addEventListener('fetch', e => {
  if (e.request.method !== 'GET' || new URL(e.request.url).origin !== self.location.origin) return;
  e.respondWith((async () => {
    const store = await caches.open(VERSION);
    return await store.match(e.request, { ignoreSearch: true }) || fetch(e.request);
  })());
});
