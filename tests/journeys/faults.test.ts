import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { common } from '../../src/copy/common.ts';
import { install } from '../../src/copy/install.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { lookForUpdate, nextVersion } from '../drivers/browser/next-version.ts';
import type { Site } from '../drivers/browser/site.ts';
import { followMarshMile, visit as visitAtOnce } from '../drivers/browser/visit.ts';
import { tellFault } from '../drivers/faults/tell.ts';

/** Of the files that the worker keeps one that no page needs. */
const KEPT = '/icon-maskable-512.png';
/** The worker looks five seconds after an opening, and then needs a moment, on a busy machine more. */
const MENDING_S = 8;

const title = (page: Page) => page.getByRole('heading', { level: 1, name: 'A mile on the marsh' });

/** A first visit, on a machine that may be busy. */
const visit = async (page: Page, site: Site): Promise<void> => {
  page.setDefaultTimeout(60_000);
  await visitAtOnce(page, site);
};

/** Opens the followed programme anew, as somebody does who comes back. */
const open = async ({ page, site }: Journey): Promise<void> => {
  await page.goto('about:blank');
  await page.goto(`${site.url}#/p/marsh-mile`);
};

for (const how of [500, 'broken off'] as const) {
  const says = how === 500 ? 'answers 500' : 'breaks off';
  journey(
    `FAULT-6 a file of the first install ${says}: nothing is promised, and the next visit mends it`,
    async (j) => {
      j.site.lose(KEPT, how);
      await j.page.goto(j.site.url);
      await j.page.getByRole('heading', { level: 1 }).waitFor();
      await seconds(4);
      expect(await j.page.getByText(install.offlineReady).count()).toBe(0);
      j.site.find(KEPT);
      await j.page.goto('about:blank');
      await visit(j.page, j.site);
      await followMarshMile(j.page);
      await j.site.cut();
      await open(j);
      await title(j.page).waitFor();
      tellFault(`first install: a file ${says}`, 1, 'nothing; use offline from the next visit on');
    },
    { expected: /500|ERR_|bad-precaching|No offline use|Failed to fetch|fetching the script/ },
  );
}

journey(
  'FAULT-6 an update of which a file answers 500 is not offered, the old version stays whole',
  async (j) => {
    await visit(j.page, j.site);
    await followMarshMile(j.page);
    const next = nextVersion();
    j.site.replace('/sw.js', next['sw.js']);
    j.site.replace('/index.html', next['index.html']);
    j.site.lose('/index.html', 500);
    await j.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration?.update().catch(() => {});
    });
    await seconds(4);
    expect(await j.page.getByText(common.update.waiting).count()).toBe(0);
    await open(j);
    await title(j.page).waitFor();
    j.site.find('/index.html');
    await lookForUpdate(j.page);
    await j.page.getByText(common.update.waiting).waitFor();
    tellFault('an update: a file answers 500', 1, 'nothing; the old version goes on');
  },
  { expected: /500|ERR_|bad-precaching|Failed to update/ },
);

/** Puts other bytes in the place of a kept file's: cut off in half, or each byte another. */
const damage = (page: Page, part: string, how: 'cut' | 'garbled'): Promise<number> =>
  page.evaluate(
    async ([name, way]) => {
      let damaged = 0;
      for (const cacheName of await caches.keys()) {
        const cache = await caches.open(cacheName);
        for (const request of await cache.keys()) {
          if (!new RegExp(name).test(new URL(request.url).pathname)) continue;
          const kept = await cache.match(request);
          const bytes = new Uint8Array((await kept?.arrayBuffer()) ?? new ArrayBuffer(0));
          const other =
            way === 'cut' ? bytes.slice(0, bytes.length / 2) : bytes.map((byte) => byte ^ 0x15);
          const type = kept?.headers.get('content-type') ?? '';
          await cache.put(request, new Response(other, { headers: { 'content-type': type } }));
          damaged += 1;
        }
      }
      return damaged;
    },
    [part, how] as const,
  );

/** Comes back now and then, until the programme is there. */
async function mended(j: Journey): Promise<void> {
  for (let opening = 1; ; opening += 1) {
    await seconds(MENDING_S);
    await open(j);
    const isThere = await title(j.page)
      .waitFor({ timeout: 5000 * opening })
      .then(
        () => true,
        () => false,
      );
    if (isThere) return;
    if (opening === 4) throw new Error('it is not mended');
  }
}

for (const [says, part, how] of [
  ['the first script is cut off', '/assets/index-[^/]*\\.js$', 'cut'],
  ['every script is garbled', '\\.js$', 'garbled'],
  ['the page itself is garbled', '/index\\.html$', 'garbled'],
] as const) {
  journey(
    `FAULT-7 of what is kept ${says}: the opening after the next is whole again`,
    async (j) => {
      await visit(j.page, j.site);
      await followMarshMile(j.page);
      const damaged = await damage(j.page, part, how);
      expect(damaged).toBeGreaterThan(0);
      await open(j);
      await seconds(2);
      expect(await title(j.page).count()).toBe(0);
      await mended(j);
      const lost = 'nothing stored; one opening fails, the next is whole where there is signal';
      tellFault(`Cache Storage: ${says}`, damaged, lost);
    },
    { expected: /404|SyntaxError|Unexpected|Invalid|error|Error/ },
  );
}
