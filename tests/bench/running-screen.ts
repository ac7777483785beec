import type { CDPSession, Page } from 'playwright-core';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { startDemo, visit } from '../drivers/browser/visit.ts';
import type { Table } from './table.ts';
import { wakeUps } from './wake-ups.ts';

const SECONDS = 60;
const PARTS = ['TaskDuration', 'ScriptDuration', 'LayoutDuration', 'RecalcStyleDuration'] as const;

type Minute = Readonly<Record<string, string>>;

async function metrics(session: CDPSession): Promise<ReadonlyMap<string, number>> {
  const read = await session.send('Performance.getMetrics');
  return new Map(read.metrics.map(({ name, value }) => [name, value]));
}

/** What the page's main thread does in a minute, by the browser's own count. */
async function aMinute(page: Page, session: CDPSession): Promise<Minute> {
  const before = await metrics(session);
  await page.waitForTimeout(SECONDS * 1000);
  const after = await metrics(session);
  const grown = (name: string): number => (after.get(name) ?? 0) - (before.get(name) ?? 0);
  const wall = grown('Timestamp');
  const work = PARTS.map((name) => {
    const share = grown(name) / wall;
    const said = `${(share * 60_000).toFixed(0)} ms, ${(share * 100).toFixed(2)} %`;
    return [name.replace('Duration', '').toLowerCase(), said] as const;
  });
  // Apart from the measuring above: being watched is work too.
  const woken = await wakeUps(session, () => page.waitForTimeout(SECONDS * 1000));
  const counts = Object.entries(woken).map(([name, count]) => [name, String(count)] as const);
  return Object.fromEntries([...work, ...counts]);
}

/** What a session that is under way asks of the page, in sight and behind another page. */
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
    const inSight = await aMinute(page, session);
    const other = await browser.tab();
    await other.goto('about:blank');
    await other.bringToFront();
    await page.waitForTimeout(2000);
    const behind = await aMinute(page, session);
    return {
      title: 'The page while a session runs',
      how: "Minutes of the demo's first session, warm-up: the main thread's work by the browser's own count, and how often it was woken by its trace. Budget with the screen on: 1 %.",
      head: ['In a minute', 'Screen on', 'Behind another page'],
      rows: Object.keys(inSight).map((name) => [name, inSight[name] ?? '', behind[name] ?? '']),
    };
  } finally {
    await browser.close();
    profile.remove();
    await site.close();
  }
}
