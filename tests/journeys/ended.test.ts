import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { unfinished } from '../../src/copy/unfinished.ts';
import { journey, killAndReturn, seconds } from '../drivers/browser/journey.ts';
import { button, go, heard, MINUTE, moveTo, rate, startOn } from '../drivers/browser/visit.ts';

/** The short session's length. */
const SESSION = 52;

/** Exactly one session is in the list, and it went to its end. */
async function finishedOnce(page: Page): Promise<void> {
  await seconds(0.5);
  expect(await page.getByText(unfinished.title).count()).toBe(0);
  await go(page, '/done');
  await page.getByText(log.count(1), { exact: true }).waitFor();
  await page.getByText(log.entry(1, 1)).waitFor();
  expect(await page.getByText(log.outcome['ended-early'].toLowerCase()).count()).toBe(0);
}

journey(
  'REAL-10 killed in its last ten seconds, a session whose end has passed is finished',
  async (j) => {
    await startOn(j.page, j.site, MINUTE);
    await seconds(SESSION - 5);
    const { at } = await heard(j.page);
    expect(at).toBeGreaterThan(SESSION - 8);
    expect(at).toBeLessThan(SESSION - 1);
    await finishedOnce(await killAndReturn(j, 8));
  },
);

for (const moment of [-1.2, 0.1, 0.6]) {
  const when = moment < 0 ? `${-moment} s before its end` : `${moment} s after its end`;
  journey(`REAL-10 killed ${when} on a hidden page, a session is kept as finished`, async (j) => {
    await startOn(j.page, j.site, MINUTE);
    await moveTo(j.page, SESSION - 11);
    const other = await j.newTab();
    await other.bringToFront();
    const { at } = await heard(j.page);
    await seconds(SESSION + moment - at);
    await finishedOnce(await killAndReturn(j, 2));
  });
}

journey('REAL-10 killed after the effort was said, both are kept', async (j) => {
  await startOn(j.page, j.site, MINUTE);
  await moveTo(j.page, SESSION - 8);
  await j.page.waitForURL(/#\/felt\//, { timeout: 60_000 });
  await rate(j.page, 6);
  await button(j.page, felt.save).click();
  await j.page.waitForURL(/#\/done\//);
  const page = await killAndReturn(j);
  await finishedOnce(page);
  await page.getByText(log.effort(6, 5)).first().waitFor();
});
