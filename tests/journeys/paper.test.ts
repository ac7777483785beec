import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Gallery, openGallery, PHONE } from '../drivers/browser/gallery.ts';
import { findings, stickingOut } from '../drivers/browser/look.ts';
import { type Grey, zbarReads } from '../drivers/exchange/picture.ts';

/** The pages of a programme in a real browser, printed into a PDF as a printer would get them. */
let gallery: Gallery;
let page: Page;
beforeAll(async () => {
  gallery = await openGallery();
  page = gallery.page;
});
afterAll(() => gallery.close());

/** 186 x 273 mm at 96 to the inch. */
const A4_WITHIN_MARGINS = { width: 703, height: 1032 };

async function show(state: string, more = ''): Promise<void> {
  await gallery.show(state, more);
  await page.locator('.paper-page').first().waitFor();
  // The size of print settles with the letters.
  await page.waitForTimeout(500);
}

/** Pages of a PDF (ISO 32000, 7.7.3.3: each is an object of type Page) and their size in points. */
async function printed(): Promise<{ pages: number; sizes: string[] }> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const sizes = (pdf.match(/\/MediaBox\s*\[[^\]]*\]/g) ?? []).map((box) =>
    (box.match(/[\d.]+/g) ?? []).map((points) => Math.round(Number(points))).join(' '),
  );
  return { pages: (pdf.match(/\/Type\s*\/Page\b/g) ?? []).length, sizes: [...new Set(sizes)] };
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
      expect(await printed()).toEqual({ pages: weeks, sizes: ['0 0 595 842'] });
      await page.locator('select').selectOption('2');
      expect((await printed()).pages).toBe(1);
      await page.locator('select').selectOption('whole');
    });

    it('PAPER-6 nothing but the pages is printed, and nothing of a page is cut off', async () => {
      await page.setViewportSize(A4_WITHIN_MARGINS);
      await page.emulateMedia({ media: 'print' });
      const seen = await page.evaluate(() => {
        const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const around = document.createRange();
        const [outside, cut]: [string[], string[]] = [[], []];
        let inside = 0;
        for (let node = words.nextNode(); node !== null; node = words.nextNode()) {
          around.selectNodeContents(node);
          const box = around.getBoundingClientRect();
          const hidden = !(node.parentElement?.checkVisibility() ?? false);
          if (hidden || box.width === 0 || (node.textContent ?? '').trim() === '') continue;
          const sheet = node.parentElement?.closest('.paper-page')?.getBoundingClientRect();
          if (sheet === undefined) {
            outside.push(node.textContent ?? '');
            continue;
          }
          inside += 1;
          const over =
            box.left < sheet.left - 1 ||
            box.right > sheet.right + 1 ||
            box.bottom > sheet.bottom + 1;
          if (over) cut.push(node.textContent ?? '');
        }
        const heights = [...document.querySelectorAll('.paper-page')].map(
          (each) => each.getBoundingClientRect().height,
        );
        const drawn = [...document.querySelectorAll('.paper-page')].map(
          (each) => each.querySelectorAll('.paper-groups > li').length,
        );
        return { outside, cut, inside, highest: Math.max(...heights), drawn };
      });
      await page.emulateMedia({ media: null });
      await page.setViewportSize(PHONE);
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

    it('PAPER-5 another decoder reads every part of the code in the size in which it is printed', async () => {
      if (codes === 0) {
        expect(await page.locator('.paper-codes').count()).toBe(0);
        return;
      }
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize(A4_WITHIN_MARGINS);
      const picture = await page.locator('.paper-codes').first().screenshot();
      await page.emulateMedia({ media: null });
      await page.setViewportSize(PHONE);
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
