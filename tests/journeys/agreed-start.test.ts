import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { agreedStart } from '../../src/copy/agreed-start.ts';
import { felt } from '../../src/copy/felt.ts';
import { running } from '../../src/copy/running.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { journey, killAndReturn, seconds } from '../drivers/browser/journey.ts';
import {
  button,
  followMarshMile,
  heard,
  MINUTE,
  openSession,
  visit,
} from '../drivers/browser/visit.ts';

/** The next full minute that leaves some seconds to tap: UTC milliseconds, and as a field has it. */
function nextMinute(atLeast: number): { readonly at: number; readonly time: string } {
  const at = Math.ceil((Date.now() + atLeast * 1000) / 60_000) * 60_000;
  const local = new Date(at);
  const two = (n: number): string => String(n).padStart(2, '0');
  return { at, time: `${two(local.getHours())}:${two(local.getMinutes())}` };
}

/** One tap for an agreed time. Gives back how long the track is without a wait before it. */
async function waitFor(page: Page, time: string): Promise<number> {
  const { length } = await heard(page);
  await button(page, agreedStart.open).click();
  await page.getByLabel(agreedStart.time).fill(time);
  await button(page, agreedStart.wait(time)).click();
  await page.getByRole('heading', { level: 1, name: agreedStart.startsAt(time) }).waitFor();
  return length;
}

/** The wall clock at which the sound's place was, or will be, the start of the session. */
async function startOf(page: Page, length: number): Promise<number> {
  const now = await page.evaluate(() => {
    const audio = document.querySelector('audio');
    if (audio === null) throw new Error('no audio element');
    return { wall: Date.now(), at: audio.currentTime, length: audio.duration };
  });
  return now.wall - (now.at - (now.length - length)) * 1000;
}

journey(
  'WAIT-10 phones that are tapped at different moments begin together, one of them out of sight',
  async (j) => {
    const other = newProfile();
    const browser = await openBrowser(other);
    try {
      const [first, second] = [j.page, j.watch(await browser.tab())];
      for (const page of [first, second]) {
        await visit(page, j.site);
        await followMarshMile(page);
        await openSession(page, MINUTE);
      }
      const { at, time } = nextMinute(45);
      const lengths = [await waitFor(first, time)];
      await seconds(11.3);
      lengths.push(await waitFor(second, time));
      // The second phone's page is out of sight from here on.
      const front = await browser.tab();
      await front.goto('about:blank');
      await front.bringToFront();

      await seconds((at - Date.now()) / 1000 + 5);
      const starts: number[] = [];
      for (const [i, page] of [first, second].entries()) {
        starts.push(await startOf(page, lengths[i] ?? Number.NaN));
        const { paused } = await heard(page);
        expect(paused).toBe(false);
      }
      expect((await heard(second)).hidden).toBe(true);
      const late = starts.map((start) => start - at);
      console.log(
        `begun after the agreed time, in ms: ${late.map((ms) => ms.toFixed(0)).join(', ')}`,
      );
      for (const by of late) expect(Math.abs(by)).toBeLessThan(1000);
      expect(Math.abs((late[0] ?? 0) - (late[1] ?? 0))).toBeLessThan(2000);
      await button(first, running.hold).waitFor();
      // 52 s of session, to its end, seen and unseen.
      await first.getByRole('heading', { level: 1, name: felt.title }).waitFor({ timeout: 60_000 });
      await second.bringToFront();
      await second.getByRole('heading', { level: 1, name: felt.title }).waitFor();
    } finally {
      await browser.close();
      other.remove();
    }
  },
);

journey('WAIT-10 a wait that was killed is waited for again, and can be left', async (j) => {
  await visit(j.page, j.site);
  await followMarshMile(j.page);
  await openSession(j.page, MINUTE);
  const { at, time } = nextMinute(60);
  const length = await waitFor(j.page, time);
  await seconds(3);
  const page = await killAndReturn(j, 2);
  await page.getByText(agreedStart.cutOff(time)).waitFor();
  expect((await page.locator('audio').count()) === 0 || (await heard(page)).paused).toBe(true);
  await button(page, agreedStart.goOn).click();
  await page.getByRole('heading', { level: 1, name: agreedStart.startsAt(time) }).waitFor();
  // A phone that was slow to play is put right when the first words are over.
  const off = async (): Promise<number> => Math.abs((await startOf(page, length)) - at);
  await expect.poll(off, { timeout: 20_000, interval: 500 }).toBeLessThan(1000);
  await page.getByRole('button', { name: new RegExp(agreedStart.leave) }).click();
  await button(page, agreedStart.leaveYes).click();
  await button(page, agreedStart.open).waitFor();
  expect((await heard(page)).paused).toBe(true);
});
