/**
 * The service worker. It keeps the app and the voice pack on the phone and answers from there.
 * It never touches what a person made: that is in IndexedDB, which this file does not open.
 * The function names below are the whole strategy.
 */
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  getCacheKeyForURL,
  type PrecacheEntry,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope & {
  readonly __WB_MANIFEST: readonly KeptFile[];
};

/** A file of the app, with the hash of its bytes as pages name it: `sha256-` and base64. */
type KeptFile = PrecacheEntry & { readonly sum: string };

const files = self.__WB_MANIFEST;

mendWhatIsDamagedAfterEachOpening(files);
repairWhatAPageFoundDamaged();
keepAppAndVoiceOnThePhone(files);
openTheAppForEveryAddress();
forgetFilesOfEarlierVersions();
serveTheFirstPageToo();
giveWayOnlyWhenThePersonSaidYes();

/**
 * A page that finds the voice pack damaged asks again with `cache: 'reload'`. The answer comes
 * from the network and replaces the stored copy; with no network the request fails, as it should.
 * Registered first, because the first route that matches wins.
 */
function repairWhatAPageFoundDamaged(): void {
  registerRoute(
    ({ request, url, sameOrigin }) =>
      sameOrigin && request.cache === 'reload' && getCacheKeyForURL(url.href) !== undefined,
    async ({ request, url }) => {
      const fresh = await fetch(request);
      const key = getCacheKeyForURL(url.href);
      if (fresh.ok && key !== undefined) {
        const holder = await cacheThatHolds(key);
        await holder?.put(key, fresh.clone());
      }
      return fresh;
    },
  );
}

async function cacheThatHolds(key: string): Promise<Cache | undefined> {
  for (const name of await self.caches.keys()) {
    const cache = await self.caches.open(name);
    if ((await cache.match(key)) !== undefined) return cache;
  }
  return undefined;
}

/** Long enough after the page was asked for that nothing of this stands in the first screen's way. */
const LOOK_AFTER_MS = 5000;

/**
 * A disk may garble or cut what is kept. A part that is damaged would fail at every opening, and
 * an app that does not come up cannot ask for anything: so the worker compares every file with
 * its hash, a moment after each opening, and fetches anew what differs. The next opening is
 * whole. Without signal all stays as it is. Registered before any route, because a listener that
 * answers keeps the event from those after it.
 */
function mendWhatIsDamagedAfterEachOpening(manifest: readonly KeptFile[]): void {
  self.addEventListener('fetch', (event) => {
    if (event.request.mode !== 'navigate') return;
    const later = new Promise((resolve) => setTimeout(resolve, LOOK_AFTER_MS));
    event.waitUntil(later.then(() => mendAll(manifest)));
  });
}

async function mendAll(manifest: readonly KeptFile[]): Promise<void> {
  await Promise.all(manifest.map(mend));
}

async function mend({ url, sum }: KeptFile): Promise<void> {
  const key = getCacheKeyForURL(url);
  const kept = key === undefined ? undefined : await self.caches.match(key);
  if (key === undefined || kept === undefined || (await sumOf(kept)) === sum) return;
  // Of another version of the app nothing is taken: the browser refuses what has another hash.
  const fresh = await fetch(url, { cache: 'reload', integrity: sum }).catch(() => undefined);
  if (fresh?.ok) await (await cacheThatHolds(key))?.put(key, fresh);
}

async function sumOf(response: Response): Promise<string> {
  const bytes = await response.arrayBuffer();
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return `sha256-${btoa(String.fromCharCode(...hash))}`;
}

/** Installing succeeds only when every file has arrived, so an installed worker is a whole app. */
function keepAppAndVoiceOnThePhone(manifest: readonly KeptFile[]): void {
  precacheAndRoute([...manifest]);
}

/**
 * Screens live in the address's fragment, so whatever is asked for as a page is the app. Its own
 * addresses are relative, so it is opened at the top of its scope and nowhere below.
 */
function openTheAppForEveryAddress(): void {
  const open = createHandlerBoundToURL('index.html');
  registerRoute(
    new NavigationRoute(async (asked) => {
      const { scope } = self.registration;
      return new URL('.', asked.url).href === scope ? open(asked) : Response.redirect(scope);
    }),
  );
}

function forgetFilesOfEarlierVersions(): void {
  cleanupOutdatedCaches();
}

/**
 * The very first page was loaded without a worker. Claiming it means that its later parts come
 * from the phone even when the signal goes before it was ever reloaded.
 */
function serveTheFirstPageToo(): void {
  self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
}

/** A new version waits until every page of the old one is closed, or until it is told to go on. */
function giveWayOnlyWhenThePersonSaidYes(): void {
  self.addEventListener('message', (event) => {
    if (event.data?.type === 'SKIP_WAITING') event.waitUntil(self.skipWaiting());
  });
}
