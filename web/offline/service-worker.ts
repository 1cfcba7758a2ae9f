/** Keeps every file of the page in the browser: after one visit it works without network. A new version waits until it is taken. */
import { precacheAndRoute } from 'workbox-precaching';

declare const self: ServiceWorkerGlobalScope;

/** Every file of the page, written here by the build (`vite.config.ts`); names that carry a hash need no revision. */
declare const FILES: { url: string; revision: string | null }[];

// what stands behind a question mark chooses no file of this page
precacheAndRoute(FILES, { ignoreURLParametersMatching: [/./] });

// the visit that brought it is served by it, too
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('message', ({ data }: { data: unknown }) => {
  const isTaken = typeof data === 'object' && data !== null && 'type' in data && data.type === 'SKIP_WAITING';
  if (isTaken) void self.skipWaiting();
});
