import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { log } from '../../src/copy/log.ts';
import { running } from '../../src/copy/running.ts';
import { unfinished } from '../../src/copy/unfinished.ts';
import { journey, killAndReturn, seconds } from '../drivers/browser/journey.ts';
import { button, go, heard, SEVERAL, startOn } from '../drivers/browser/visit.ts';

/** The place that the app says it was cut off at, in seconds. */
async function placeOffered(page: Page): Promise<number> {
  const offer = page.getByRole('region', { name: unfinished.title });
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
  await button(page, unfinished.keep).click();
  await page.getByText(unfinished.title).waitFor({ state: 'detached' });
  await go(page, '/done');
  await page.getByText(log.outcome['ended-early'].toLowerCase()).waitFor();
});
