import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { startDemo, visit } from '../drivers/browser/visit.ts';
import type { Table } from './table.ts';

const SECONDS = 60;
const PARTS = ['TaskDuration', 'ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'] as const;

/** What the page's main thread does in a minute of the running screen, by the browser's count. */
export async function runningScreen(): Promise<Table> {
  const site = await openSite();
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    const page = await browser.tab();
    await visit(page, site);
    await startDemo(page);
    await page.waitForTimeout(8000);
    const session = await browser.context.newCDPSession(page);
    await session.send('Performance.enable');
    const read = async (): Promise<Map<string, number>> =>
      new Map(
        (await session.send('Performance.getMetrics')).metrics.map(({ name, value }) => [
          name,
          value,
        ]),
      );
    const before = await read();
    await page.waitForTimeout(SECONDS * 1000);
    const after = await read();
    const wall = (after.get('Timestamp') ?? 0) - (before.get('Timestamp') ?? 0);
    return {
      title: 'Main thread while a session runs, screen on',
      how: `A minute of the demo's first session, warm-up, by the browser's own count of the page's main thread. Budget: 1 %.`,
      head: ['Work', 'In a minute', 'Share'],
      rows: PARTS.map((name) => {
        const spent = (after.get(name) ?? Number.NaN) - (before.get(name) ?? Number.NaN);
        return [
          name.replace('Duration', '').toLowerCase(),
          `${((spent / wall) * 60_000).toFixed(0)} ms`,
          `${((spent / wall) * 100).toFixed(2)} %`,
        ];
      }),
    };
  } finally {
    await browser.close();
    profile.remove();
    await site.close();
  }
}
