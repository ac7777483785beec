import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { running } from '../../src/copy/running.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { button, go, heard, MINUTE, SEVERAL, startOn } from '../drivers/browser/visit.ts';

/** The short session's length. */
const SESSION = 52;

/** Kills the browser and opens the app again on the same profile. */
async function killAndReturn(j: Journey, away = 0): Promise<Page> {
  await j.kill();
  await seconds(away);
  const page = await j.restart();
  await page.goto(j.site.url);
  return page;
}

/** The place that the app says it was cut off at, in seconds. */
async function placeOffered(page: Page): Promise<number> {
  const offer = page.getByRole('region', { name: before.unfinished.title });
  const said = /at (\d+):(\d\d) of/.exec(await offer.innerText());
  return Number(said?.[1]) * 60 + Number(said?.[2]);
}

for (const moment of [2, 9, 16.5]) {
  journey(`REAL-9 killed after ${moment} s, at most five seconds are lost`, async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await seconds(moment);
    const { at } = await heard(j.page);
    const page = await killAndReturn(j);
    const place = await placeOffered(page);
    console.log(`killed at ${at.toFixed(1)} s, offered from ${place} s`);
    expect(place).toBeLessThanOrEqual(at + 0.5);
    expect(at - place).toBeLessThanOrEqual(6);
    await page.getByRole('button', { name: /^Go on from/ }).click();
    await button(page, running.hold).waitFor();
    await seconds(1.5);
    const now = await heard(page);
    expect(now.paused).toBe(false);
    expect(now.at).toBeGreaterThan(place - 3);
    expect(now.at).toBeLessThan(place + 4);
  });
}

journey('REAL-9 killed on hold, the place of the hold is kept', async (j) => {
  await startOn(j.page, j.site, SEVERAL);
  await seconds(12);
  const { at } = await heard(j.page);
  await button(j.page, running.hold).click();
  await button(j.page, running.goOn).waitFor();
  await seconds(8);
  const page = await killAndReturn(j);
  const place = await placeOffered(page);
  expect(Math.abs(at - place)).toBeLessThanOrEqual(1.5);
});

journey('REAL-9 what was done before a kill can be kept instead', async (j) => {
  await startOn(j.page, j.site, SEVERAL);
  await seconds(12);
  const page = await killAndReturn(j);
  await button(page, before.unfinished.keep).click();
  await page
    .getByRole('heading', { name: felt.title })
    .or(page.getByText(before.unfinished.title))
    .first()
    .waitFor();
  await go(page, '/done');
  await page.getByText(log.outcome['ended-early'].toLowerCase()).waitFor();
});

journey(
  'REAL-10 killed in its last ten seconds, a session whose end has passed is finished',
  async (j) => {
    await startOn(j.page, j.site, MINUTE);
    await seconds(SESSION - 5);
    const { at } = await heard(j.page);
    expect(at).toBeGreaterThan(SESSION - 8);
    expect(at).toBeLessThan(SESSION - 1);
    const page = await killAndReturn(j, 8);
    await seconds(1);
    expect(await page.getByText(before.unfinished.title).count()).toBe(0);
    await finishedOnce(page);
  },
);

journey('REAL-10 killed right after its end, a session is kept as finished', async (j) => {
  await startOn(j.page, j.site, MINUTE);
  await j.page.waitForURL(/#\/felt\//, { timeout: 60_000 });
  const page = await killAndReturn(j);
  await finishedOnce(page);
});

journey(
  'REAL-10 killed while the end is heard on a hidden page, a session is kept as finished',
  async (j) => {
    await startOn(j.page, j.site, MINUTE);
    const other = await j.newTab();
    await other.bringToFront();
    await seconds(SESSION + 1);
    const page = await killAndReturn(j);
    await finishedOnce(page);
  },
);

journey('REAL-10 killed after the effort was said, both are kept', async (j) => {
  await startOn(j.page, j.site, MINUTE);
  await j.page.waitForURL(/#\/felt\//, { timeout: 60_000 });
  await j.page.getByRole('radio', { name: /^6/ }).check();
  await button(j.page, felt.save).click();
  await j.page.waitForURL(/#\/done\//);
  const page = await killAndReturn(j);
  await finishedOnce(page);
  await page.getByText(log.effort(6, 5)).first().waitFor();
});

/** Exactly one session is in the list, and it went to its end. */
async function finishedOnce(page: Page): Promise<void> {
  await go(page, '/done');
  await page.getByText(log.count(1), { exact: true }).waitFor();
  await page.getByText(log.entry(1, 1)).waitFor();
  expect(await page.getByText(log.outcome['ended-early'].toLowerCase()).count()).toBe(0);
}
