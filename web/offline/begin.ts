/** The service worker of the page that is open, beside it wherever it is served from. */
import { Workbox } from 'workbox-window';
import { Offline } from './offline.svelte.ts';

/** Null where the browser has none to offer, and while the page is developed. */
export function openOffline(): Offline | null {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return null;
  const script = new URL('service-worker.js', document.baseURI).href;
  const offline = new Offline(new Workbox(script), {
    isServed: () => navigator.serviceWorker.controller !== null,
    reload: () => location.reload(),
  });
  // a tab may stay open for days
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') offline.look();
  });
  return offline;
}
