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
  readonly __WB_MANIFEST: readonly (PrecacheEntry | string)[];
};

repairWhatAPageFoundDamaged();
keepAppAndVoiceOnThePhone(self.__WB_MANIFEST);
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

/** Installing succeeds only when every file has arrived, so an installed worker is a whole app. */
function keepAppAndVoiceOnThePhone(manifest: readonly (PrecacheEntry | string)[]): void {
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
