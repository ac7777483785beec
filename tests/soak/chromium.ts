/** The long session in Chromium, which tells what its heap holds. */
import type { Page } from 'playwright-core';
import type { RealBrowser } from '../drivers/browser/browser.ts';
import type { Site } from '../drivers/browser/site.ts';
import {
  followMarshMile,
  heard,
  MINUTE,
  openSession,
  start,
  visit,
} from '../drivers/browser/visit.ts';
import { planOf, type Runner, readTold, watchTold } from './soak.ts';

/** @param page the page to run it in, at no address yet */
export async function inChromium(browser: RealBrowser, site: Site, page: Page): Promise<Runner> {
  const session = await browser.context.newCDPSession(page);
  await session.send('Performance.enable');
  return {
    name: 'Chromium',
    async start(minutes) {
      await visit(page, site);
      await page.evaluate(watchTold);
      await followMarshMile(page, 'Wren', planOf(minutes));
      await openSession(page, MINUTE);
      await start(page);
    },
    hide: async () => (await browser.tab()).bringToFront(),
    heard: () => heard(page),
    told: () => page.evaluate(readTold),
    async back() {
      await page.bringToFront();
      await page.waitForURL(/#\/felt\//);
    },
    async memory() {
      await session.send('HeapProfiler.collectGarbage');
      const { metrics } = await session.send('Performance.getMetrics');
      const of = (name: string): number =>
        metrics.find((each) => each.name === name)?.value ?? Number.NaN;
      return [of('JSHeapUsedSize'), of('Nodes')];
    },
  };
}
