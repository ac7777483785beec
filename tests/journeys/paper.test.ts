import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Gallery, openGallery } from '../drivers/browser/gallery.ts';
import { findings, stickingOut } from '../drivers/browser/look.ts';
import { onPaper, printed, wordsOnSheets } from '../drivers/browser/paper.ts';
import { type Grey, zbarReads } from '../drivers/exchange/picture.ts';

/** The pages of a programme in a real browser, printed into a PDF as a printer would get them. */
let gallery: Gallery;
let page: Page;
beforeAll(async () => {
  gallery = await openGallery();
  page = gallery.page;
});
afterAll(() => gallery.close());

async function show(state: string, more = ''): Promise<void> {
  await gallery.show(state, more);
  await page.locator('.paper-page').first().waitFor();
  // The size of print settles with the letters.
  await page.waitForTimeout(500);
}

/** A screenshot in grey, as most printers make it. */
function greyOf(png: Buffer): Grey {
  const pgm = execFileSync('convert', ['png:-', '-colorspace', 'gray', '-depth', '8', 'pgm:-'], {
    input: png,
    maxBuffer: 1 << 26,
  });
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 64).toString('latin1'));
  const [start = '', width, height] = head ?? [];
  const data = new Uint8Array(pgm.subarray(start.length));
  return { data, width: Number(width), height: Number(height) };
}

const PROGRAMMES = [
  { state: 'paper', weeks: 6, groups: 4, codes: 2 },
  { state: 'paper-plain', weeks: 6, groups: 4, codes: 0 },
  { state: 'paper-eight', weeks: 12, groups: 8, codes: 3 },
  { state: 'paper-four-codes', weeks: 12, groups: 8, codes: 4 },
] as const;

describe.each(PROGRAMMES)(
  '$state: $weeks weeks, $groups groups',
  ({ state, weeks, groups, codes }) => {
    beforeAll(() => show(state));

    it('PAPER-6 is as many A4 pages as it has weeks', async () => {
      // ISO 216: 210 x 297 mm are 595 x 842 points.
      expect(await printed(page)).toEqual({ pages: weeks, sizes: ['0 0 595 842'] });
      await page.locator('select').selectOption('2');
      expect((await printed(page)).pages).toBe(1);
      await page.locator('select').selectOption('whole');
    });

    it('PAPER-6 nothing but the pages is printed, and nothing of a page is cut off', async () => {
      const seen = await onPaper(page, async () => ({
        ...(await wordsOnSheets(page, '.paper-page')),
        ...(await page.evaluate(() => {
          const sheets = [...document.querySelectorAll('.paper-page')];
          return {
            highest: Math.max(...sheets.map((each) => each.getBoundingClientRect().height)),
            drawn: sheets.map((each) => each.querySelectorAll('.paper-groups > li').length),
          };
        })),
      }));
      expect(seen.outside).toEqual([]);
      expect(seen.cut).toEqual([]);
      expect(seen.inside).toBeGreaterThan(weeks * groups * 3);
      expect(seen.drawn).toEqual(Array.from({ length: weeks }, () => groups));
      // What is left of A4 within margins of 12 mm.
      expect(seen.highest).toBeLessThanOrEqual((273 * 96) / 25.4);
    });

    it('PAPER-7 no print is smaller than 6 points, and cautions are never smaller than 7', async () => {
      const smallest = await page.evaluate(() => {
        const points = (each: Element) =>
          (Number.parseFloat(getComputedStyle(each).fontSize) * 72) / 96;
        const least = (query: string) =>
          Math.min(...[...document.querySelectorAll(query)].map(points));
        return { any: least('.paper-page *'), care: least('.paper-care, .paper-care *') };
      });
      expect(smallest.any).toBeGreaterThanOrEqual(6);
      expect(smallest.care).toBeGreaterThanOrEqual(7);
    });

    it('PAPER-5 another decoder reads every part of the code in the size in which it is printed', async ({
      task,
    }) => {
      if (codes === 0) {
        expect(await page.locator('.paper-codes').count()).toBe(0);
        return;
      }
      // A second try does not begin with what the first left.
      if ((task.result?.retryCount ?? 0) > 0) await show(state);
      const picture = await onPaper(page, () => page.locator('.paper-codes').first().screenshot());
      const links = zbarReads(greyOf(picture)).toSorted();
      expect(links).toHaveLength(codes);
      for (const [n, link] of links.entries()) {
        expect(link).toMatch(
          new RegExp(`^https://club\\.example/towpath/#/join/${n + 1}\\.${codes}\\.`),
        );
      }
    });
  },
);

it('PAPER-8 the preview is white paper in the dark too, fits the narrowest phone, and axe finds nothing', async () => {
  await page.setViewportSize({ width: 320, height: 640 });
  await show('paper', '&theme=dark');
  expect(await stickingOut(page)).toEqual([]);
  expect(await findings(page, false)).toEqual([]);
  const ground = await page
    .locator('.paper-page')
    .first()
    .evaluate((each) => getComputedStyle(each).backgroundColor);
  expect(ground).toBe('rgb(255, 255, 255)');
});
