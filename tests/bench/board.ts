import type { Page } from 'playwright-core';
import { boardPage } from '../../src/copy/board-page.ts';
import { nextPage } from '../../src/copy/next-page.ts';
import { wordsPage } from '../../src/copy/words-page.ts';
import { TWELVE } from '../drivers/board/club.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { storeClub } from '../drivers/browser/club.ts';
import { openSite } from '../drivers/browser/site.ts';
import { go, visit } from '../drivers/browser/visit.ts';
import { took } from './long-log.ts';
import { median, type Table } from './table.ts';

const SIZES = [50, 500, 5000] as const;
const SLOWDOWN = 4;
const RUNS = 5;
/** Sunday of week 11. */
const TODAY = '2027-05-16T18:00:00Z';

type Times = Readonly<Record<string, number>>;

/** Once through the board from a fresh load of the page. */
async function once(page: Page, count: number): Promise<Times> {
  await go(page, '/lead');
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
  // What is fetched after the first page is there by then, as on a device in somebody's hand.
  await page.waitForTimeout(2500);
  const at = `/board/${TWELVE.id}`;
  const opened = await took(page, { to: at, until: boardPage.found(count, count) });
  // A leader looks before typing: all of the board is drawn by then.
  await page.waitForTimeout(1500);
  const name = `Member ${count - 1}`;
  const found = await took(page, {
    type: ['main input[type=search], main input[type=text]', name],
    until: boardPage.found(1, count),
  });
  const words = await took(page, { to: `${at}/words`, until: wordsPage.lead });
  const next = await took(page, { to: `${at}/next`, until: nextPage.message });
  return { opened, found, words, next };
}

/** All runs over so many people, in a browser of its own. */
async function over(count: number, width: number): Promise<readonly Times[]> {
  const site = await openSite();
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    const page = await browser.tab();
    page.setDefaultTimeout(120_000);
    await page.setViewportSize({ width, height: 844 });
    await page.clock.setFixedTime(new Date(TODAY));
    await visit(page, site);
    await storeClub(page, count);
    const session = await browser.context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
    const runs: Times[] = [];
    for (let run = 0; run < RUNS; run += 1) runs.push(await once(page, count));
    return runs;
  } finally {
    await browser.close();
    profile.remove();
    await site.close();
  }
}

const WIDTHS = [
  ['phone', 390],
  ['laptop', 1280],
] as const;
const ACTS = ['opened', 'found', 'words', 'next'] as const;

/** What the board takes on a slow processor, and how it grows with its people. */
export async function openingBoard(): Promise<Table> {
  const rows: string[][] = [];
  for (const [device, width] of WIDTHS)
    for (const count of SIZES) {
      const runs = await over(count, width);
      const times = ACTS.map((act) => `${median(runs.map((run) => run[act] ?? 0)).toFixed(0)} ms`);
      rows.push([device, count.toLocaleString('en'), ...times]);
    }
  return {
    title: 'The board',
    how: `12 weeks, up to 36 sessions a person, the built app in Chromium at ${SLOWDOWN} x slowdown, over IndexedDB; from the tap to the frame that shows it. Median of ${RUNS}. Budget for 500 people: 200 ms to open.`,
    head: ['Screen', 'People', 'Opened', 'One found by name', 'Who needs a word', 'Next week'],
    rows,
  };
}
