import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { leadDay, leading } from '../../src/copy/lead-day.ts';
import { lockScreen } from '../../src/copy/lock-screen.ts';
import { log } from '../../src/copy/log.ts';
import { faint } from '../drivers/browser/contrast.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { chooseGroups, leadStaggered, readyToLead } from '../drivers/browser/leading.ts';
import { pressLock, shownOnLock, watchLockScreen } from '../drivers/browser/lock.ts';
import { stickingOut } from '../drivers/browser/look.ts';
import { keepTrack, loudest, trackOf } from '../drivers/browser/track.ts';
import { button, go, heard, moveTo, visit } from '../drivers/browser/visit.ts';
import { EIGHT_GROUPS } from '../drivers/gallery/eight-groups.ts';

/** The end of the example's first week, four groups of 31 minutes, two minutes apart. */
const TOTAL = 37 * 60;

/** Until the lock screen says something, looked at often; the place of the sound then. */
async function saidAt(page: Page, title: string): Promise<number> {
  for (let look = 0; look < 300; look += 1) {
    if ((await shownOnLock(page)).title === title) return (await heard(page)).at;
    await seconds(0.1);
  }
  throw new Error(`the lock screen says ${(await shownOnLock(page)).title}`);
}

journey(
  'DAY-12 four groups are led from a hidden page: changes come when due, and all are held and go on',
  async (j) => {
    const { page } = j;
    await watchLockScreen(page);
    await keepTrack(page);
    await visit(page, j.site);
    await chooseGroups(page);
    await leadStaggered(page);
    const other = await j.newTab();
    await other.bringToFront();
    await moveTo(page, 112);
    await seconds(1);
    const before = await heard(page);
    expect(before.hidden).toBe(true);
    expect((await shownOnLock(page)).title).toBe('Group 1 easy walk · Groups 2, 3, 4 wait');
    expect((await shownOnLock(page)).next).toBe('then group 2 easy walk');
    // The second group starts after two minutes: that is the plan, worked by hand.
    const second = await saidAt(page, 'Groups 1, 2 easy walk · Groups 3, 4 wait');
    expect(second).toBeGreaterThan(119.9);
    expect(second).toBeLessThan(120.7);
    const after = await heard(page);
    expect(Math.abs(after.at - before.at - (after.clock - before.clock))).toBeLessThan(0.15);
    expect(after.hidden).toBe(true);

    const pace = async () => {
      const { at, clock } = await heard(page);
      return at - clock;
    };
    const pacing = await pace();
    await pressLock(page, 'nexttrack');
    await pressLock(page, 'previoustrack');
    await seconds(1);
    expect(Math.abs((await pace()) - pacing)).toBeLessThan(0.15);
    const at = (await heard(page)).at;
    await pressLock(page, 'pause');
    await seconds(1.5);
    const held = await heard(page);
    expect(held.paused).toBe(false);
    expect(held.at).toBeGreaterThan(TOTAL + 120);
    expect((await shownOnLock(page)).title).toBe(lockScreen.holding);
    await pressLock(page, 'play');
    await seconds(1);
    const on = await heard(page);
    expect(on.hidden).toBe(true);
    // Three seconds before the place, and not longer since than this test takes.
    expect(on.at).toBeGreaterThan(at - 3.5);
    expect(on.at).toBeLessThan(at + 3);

    await page.bringToFront();
    await page.getByRole('region', { name: '2 Dunlin' }).waitFor();
    await button(page, leading.holdAll).click();
    await button(page, leading.goOn).click();
    await button(page, leading.holdAll).waitFor();
    const end = page.getByRole('button', { name: leading.end });
    await end.scrollIntoViewIfNeeded();
    await end.hover();
    await page.mouse.down();
    await seconds(1.3);
    await page.mouse.up();
    await page.getByRole('heading', { level: 1, name: leading.over.ended }).waitFor();
    expect((await heard(page)).paused).toBe(true);
    await go(page, '/done');
    await page.getByText(log.empty).waitFor();

    // The second group's start, and quiet before it, in the track as another decoder hears it.
    const track = await trackOf(page);
    expect(loudest(track, 120, 122)).toBeGreaterThan(-20);
    expect(loudest(track, 104, 108)).toBeLessThan(-40);
  },
);

journey('DAY-7 a page that was closed while leading goes on where the groups are', async (j) => {
  const { page } = j;
  await visit(page, j.site);
  const at = await chooseGroups(page);
  await leadStaggered(page);
  const began = Date.now();
  await seconds(3);
  await page.reload();
  await go(page, at);
  const goOn = page.getByRole('button', { name: /^Go on at 0:\d\d$/ });
  await goOn.waitFor();
  await seconds(3);
  await goOn.click();
  await button(page, leading.holdAll).waitFor();
  await seconds(2);
  const place = (await heard(page)).at;
  expect(Math.abs(place - (Date.now() - began) / 1000)).toBeLessThan(1.5);
  await page.getByRole('button', { name: leading.end }).click();
  await page.getByRole('button', { name: 'Yes, end it' }).click();
  await page.getByRole('link', { name: leading.over.desk }).click();
  await go(page, at);
  await button(page, leadDay.begin).waitFor();
});

/** Height of the great words' capitals in px, as the browser itself measures the letter H. */
const capitals = (page: Page): Promise<number[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.lead-word')].map((word) => {
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(word);
      const ink = document.createElement('canvas').getContext('2d');
      if (ink === null) throw new Error('no canvas');
      ink.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return ink.measureText('H').actualBoundingBoxAscent;
    }),
  );
/** A phone's reference density: 160 px to the inch (from memory; the same as for one session). */
const mm = (px: number): number => (px / 160) * 25.4;

const lowest = (page: Page): Promise<number> =>
  page.evaluate(() =>
    Math.min(...[...document.querySelectorAll('button')].map((each) => each.offsetHeight)),
  );

journey(
  'DAY-9 four groups are read at arm’s length on a phone, eight somewhat nearer',
  async (j) => {
    const { page } = j;
    await page.setViewportSize({ width: 390, height: 844 });
    await visit(page, j.site);
    await chooseGroups(page);
    await leadStaggered(page);
    await moveTo(page, 728);
    await seconds(1);
    const four = await capitals(page);
    expect(four).toHaveLength(4);
    expect(Math.min(...four.map(mm))).toBeGreaterThanOrEqual(12);
    expect(await lowest(page)).toBeGreaterThanOrEqual(64);
    const { looked, lines } = await faint(page, 7);
    expect(looked).toBeGreaterThan(15);
    expect(lines).toEqual([]);
    // All four stand above the controls without scrolling.
    const below = await page.evaluate(() => {
      const controls = document.querySelector('.lead-controls')?.getBoundingClientRect().top ?? 0;
      const blocks = [...document.querySelectorAll('.lead-group')];
      return blocks.filter((each) => each.getBoundingClientRect().bottom > controls).length;
    });
    expect(below).toBe(0);
    for (const [width, height, size] of [
      [320, 568, '100%'],
      [390, 844, '200%'],
      [844, 390, '100%'],
      [1280, 800, '100%'],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.evaluate((text) => {
        document.documentElement.style.fontSize = text === '100%' ? '' : text;
      }, size);
      await seconds(0.3);
      expect(await stickingOut(page), `${width} px, ${size}`).toEqual([]);
    }
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '';
    });
    await page.setViewportSize({ width: 390, height: 844 });
    await page.getByRole('button', { name: leading.end }).click();
    await page.getByRole('button', { name: 'Yes, end it' }).click();
    await page.getByRole('link', { name: leading.over.desk }).click();

    await chooseGroups(page, EIGHT_GROUPS.text);
    await readyToLead(page);
    await button(page, leadDay.begin).click();
    await button(page, leading.holdAll).waitFor();
    const eight = await capitals(page);
    expect(eight).toHaveLength(8);
    expect(Math.min(...eight.map(mm))).toBeGreaterThanOrEqual(7);
    expect(await lowest(page)).toBeGreaterThanOrEqual(64);
  },
);
