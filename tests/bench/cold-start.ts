import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { visit } from '../drivers/browser/visit.ts';
import { median, type Table } from './table.ts';

const RUNS = 7;

/** A start from the cache alone: the browser is new, the network is gone, the processor slow. */
export async function coldStart(): Promise<Table> {
  const rows: string[][] = [];
  for (const slowdown of [1, 4]) {
    const runs: { painted: number; usable: number }[] = [];
    const site = await openSite();
    const profile = newProfile();
    const first = await openBrowser(profile);
    await visit(await first.tab(), site);
    await first.close();
    await site.cut();
    for (let run = 0; run < RUNS; run += 1) {
      const browser = await openBrowser(profile);
      const page = await browser.tab();
      const session = await browser.context.newCDPSession(page);
      // The browser's own start is over by then: what is measured is the app's.
      await page.waitForTimeout(3000);
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
      await page.addInitScript(noteWhenUsable);
      await page.goto(site.url);
      await page.waitForFunction(
        () =>
          'usableAt' in window && performance.getEntriesByName('first-contentful-paint').length > 0,
      );
      runs.push(
        await page.evaluate(() => ({
          painted:
            performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
          usable: (window as unknown as { usableAt: number }).usableAt,
        })),
      );
      await browser.close();
    }
    profile.remove();
    rows.push([
      `${slowdown} x`,
      `${median(runs.map((run) => run.painted)).toFixed(0)} ms`,
      `${median(runs.map((run) => run.usable)).toFixed(0)} ms`,
      `${Math.max(...runs.map((run) => run.usable)).toFixed(0)} ms`,
    ]);
  }
  return {
    title: 'Cold start from the cache',
    how: `Network gone, new browser on the same profile; usable is the first frame after a link into a programme stands on the screen. Median of ${RUNS}. Budget: 1 s at 4 x.`,
    head: ['Processor slowed', 'First paint', 'Usable', 'Slowest'],
    rows,
  };
}

/** Runs in the page, before its own scripts. */
function noteWhenUsable(): void {
  const seen = new MutationObserver(() => {
    if (document.querySelector('main a[href*="/p/"]') === null) return;
    seen.disconnect();
    requestAnimationFrame(() =>
      setTimeout(() => {
        (window as unknown as { usableAt: number }).usableAt = performance.now();
      }),
    );
  });
  seen.observe(document, { childList: true, subtree: true });
}
