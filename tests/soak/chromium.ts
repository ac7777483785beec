/** The long session in Chromium, which tells what its heap holds. */
import type { Page } from 'playwright-core';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid } from '../../src/copy/join.ts';
import type { RealBrowser } from '../drivers/browser/browser.ts';
import type { Site } from '../drivers/browser/site.ts';
import { button, heard, openFile, openSession, start, visit } from '../drivers/browser/visit.ts';
import { programme } from '../drivers/engines/visit.ts';
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
      await openFile(page, 'long.json', programme(planOf(minutes)));
      await button(page, choiceSaid('keep', 'new', 1).name).click();
      await button(page, groups.choose('Wren')).click();
      await page.getByRole('heading', { level: 1, name: 'A mile on the marsh' }).waitFor();
      await openSession(page, { week: 1, session: 1 });
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
