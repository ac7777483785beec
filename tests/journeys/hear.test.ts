import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { hear } from '../../src/copy/hear.ts';
import { settings } from '../../src/copy/settings.ts';
import { faint } from '../drivers/browser/contrast.ts';
import { type Gallery, openGallery, PHONE } from '../drivers/browser/gallery.ts';
import { findings, stickingOut, unreachable } from '../drivers/browser/look.ts';
import { button } from '../drivers/browser/visit.ts';

/** A session heard from cue to cue in a real browser, with the voice that is shipped. */
let gallery: Gallery;
let page: Page;
beforeAll(async () => {
  gallery = await openGallery();
  page = gallery.page;
});
afterAll(() => gallery.close());

const playing = () =>
  page.locator('audio').evaluate((audio: HTMLAudioElement) => ({
    at: audio.currentTime,
    stands: audio.paused,
    length: audio.duration,
  }));
const current = () => page.locator('[aria-current="true"]').innerText();
const leads = () =>
  page
    .locator('.marker')
    .evaluate((marker) => Number.parseFloat((marker as HTMLElement).style.left));

async function open(more = ''): Promise<void> {
  await gallery.show('hear', more);
  await button(page, hear.play).waitFor();
}

it('HEAR-6 a tap begins the sound, and words, marker and place go on with it', async () => {
  await open();
  expect(await playing()).toMatchObject({ at: 0, stands: true });
  await button(page, hear.play).click();
  const first = await current();
  // The session's first two cues are over within 12 s of the short track.
  await expect.poll(current, { timeout: 20_000 }).not.toBe(first);
  const now = await playing();
  expect(now.stands).toBe(false);
  // 34 min of the session are a few minutes from cue to cue.
  expect(now.length).toBeLessThan(6 * 60);
  expect(await leads()).toBeGreaterThan(0);
  await button(page, hear.pause).click();
  await expect.poll(async () => (await playing()).stands).toBe(true);
});

it('HEAR-6 a tapped line is heard and seen from its countdown on, and fewer words keep the place', async () => {
  await open();
  const line = page.getByRole('button', { name: /^20:00/ });
  await line.click();
  await expect.poll(async () => (await playing()).at).toBeGreaterThan(1);
  expect(await current()).toMatch(/^20:00/);
  const share = await leads();
  await page.getByLabel(settings.talks.few[0]).check();
  await button(page, hear.play).waitFor();
  expect(await current()).toMatch(/^20:00/);
  expect(Math.abs((await leads()) - share)).toBeLessThan(0.5);
  // The last line comes into view when it is gone to, and the strip is not in its way.
  for (let i = 0; i < 8; i++) await button(page, hear.next).click();
  const seen = await page.locator('[aria-current="true"]').boundingBox();
  const head = await page.locator('.hear-head').boundingBox();
  if (seen === null || head === null) throw new Error('nothing to be seen');
  expect(seen.y).toBeGreaterThanOrEqual(head.y + head.height - 1);
  expect(seen.y + seen.height).toBeLessThanOrEqual(PHONE.height);
});

for (const theme of ['light', 'dark'] as const)
  it(`HEAR-5 axe finds nothing, ${theme}; all is reached by keyboard, and nothing is wider than 320 px`, async () => {
    await page.setViewportSize({ width: 320, height: 568 });
    await open(`&theme=${theme}`);
    expect(await findings(page, false)).toEqual([]);
    expect((await faint(page, 4.5)).lines).toEqual([]);
    expect(await unreachable(page)).toEqual([]);
    expect(await stickingOut(page)).toEqual([]);
    await page.setViewportSize(PHONE);
  });
