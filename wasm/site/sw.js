// Keeps the whole page for use without a signal. Each version has its own store
// and is served from it alone, so two versions never mix.
'use strict';
const VERSION = "unbuilt";
const FILES = [];

self.addEventListener('install', e => e.waitUntil((async () => {
  const store = await caches.open(VERSION);
  await store.addAll(FILES.map(f => new Request(f, { cache: 'no-cache' })));
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
});

self.addEventListener('fetch', e => {
  if (e.request.method !== 'GET' || new URL(e.request.url).origin !== self.location.origin) return;
  e.respondWith((async () => {
    const store = await caches.open(VERSION);
    return await store.match(e.request, { ignoreSearch: true }) || fetch(e.request);
  })());
});
