import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { followMarshMile, visit } from '../drivers/browser/visit.ts';
import { median, type Table } from './table.ts';

const RUNS = 7;

/** Who starts, what they do before, and what stands on the screen when it is of use to them. */
const PEOPLE = [
  { who: 'new, the welcome', before: async () => {}, usable: 'main a[href*="/p/"]' },
  { who: 'coming back, what to do now', before: followMarshMile, usable: 'main #next' },
] as const;

/** A start from the cache alone: the browser is new, the network is gone, the processor slow. */
export async function coldStart(): Promise<Table> {
  const rows: string[][] = [];
  for (const { who, before, usable } of PEOPLE) {
    const site = await openSite();
    const profile = newProfile();
    const first = await openBrowser(profile);
    const tab = await first.tab();
    await visit(tab, site);
    await before(tab);
    await first.close();
    await site.cut();
    for (const slowdown of [1, 4]) {
      const runs: { painted: number; usable: number }[] = [];
      for (let run = 0; run < RUNS; run += 1) {
        const browser = await openBrowser(profile);
        const page = await browser.tab();
        const session = await browser.context.newCDPSession(page);
        // The browser's own start is over by then: what is measured is the app's.
        await page.waitForTimeout(3000);
        await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
        await page.addInitScript(noteWhenUsable, usable);
        await page.goto(site.url);
        await page.waitForFunction(
          () =>
            'usableAt' in window &&
            performance.getEntriesByName('first-contentful-paint').length > 0,
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
      rows.push([
        who,
        `${slowdown} x`,
        `${median(runs.map((run) => run.painted)).toFixed(0)} ms`,
        `${median(runs.map((run) => run.usable)).toFixed(0)} ms`,
        `${Math.max(...runs.map((run) => run.usable)).toFixed(0)} ms`,
      ]);
    }
    profile.remove();
  }
  return {
    title: 'Cold start from the cache',
    how: `Network gone, new browser on the same profile; usable is the first frame after a link into a programme stands on the screen, or the next session of the one that is followed. Median of ${RUNS}. Budget: 1 s at 4 x.`,
    head: ['Who', 'Processor slowed', 'First paint', 'Usable', 'Slowest'],
    rows,
  };
}

/** Runs in the page, before its own scripts. */
function noteWhenUsable(usable: string): void {
  const seen = new MutationObserver(() => {
    if (document.querySelector(usable) === null) return;
    seen.disconnect();
    requestAnimationFrame(() =>
      setTimeout(() => {
        (window as unknown as { usableAt: number }).usableAt = performance.now();
      }),
    );
  });
  seen.observe(document, { childList: true, subtree: true });
}
