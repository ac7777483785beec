/** A page as a printer gets it. */
import type { Page } from 'playwright-core';
import { PHONE } from './gallery.ts';

/** 186 x 273 mm at 96 to the inch. */
const A4_WITHIN_MARGINS = { width: 703, height: 1032 };

/** Has the page as it is printed while the job runs, and on a phone after it, whatever happens. */
export async function onPaper<T>(page: Page, job: () => Promise<T>): Promise<T> {
  try {
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize(A4_WITHIN_MARGINS);
    return await job();
  } finally {
    await page.emulateMedia({ media: null });
    await page.setViewportSize(PHONE);
  }
}

/** Pages of a PDF (ISO 32000, 7.7.3.3: each is an object of type Page) and their size in points. */
export async function printed(page: Page): Promise<{ pages: number; sizes: string[] }> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const sizes = (pdf.match(/\/MediaBox\s*\[[^\]]*\]/g) ?? []).map((box) =>
    (box.match(/[\d.]+/g) ?? []).map((points) => Math.round(Number(points))).join(' '),
  );
  return { pages: (pdf.match(/\/Type\s*\/Page\b/g) ?? []).length, sizes: [...new Set(sizes)] };
}

/** The words that can be seen: how many lie in a sheet, and which outside of one or cut off by it. */
export const wordsOnSheets = (page: Page, sheets: string) =>
  page.evaluate((query) => {
    const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const around = document.createRange();
    const [outside, cut]: [string[], string[]] = [[], []];
    let inside = 0;
    for (let node = words.nextNode(); node !== null; node = words.nextNode()) {
      around.selectNodeContents(node);
      const text = node.textContent ?? '';
      const box = around.getBoundingClientRect();
      const hidden = !(node.parentElement?.checkVisibility() ?? false);
      if (hidden || box.width === 0 || text.trim() === '') continue;
      const sheet = node.parentElement?.closest(query)?.getBoundingClientRect();
      if (sheet === undefined) {
        outside.push(text);
        continue;
      }
      inside += 1;
      const over =
        box.left < sheet.left - 1 || box.right > sheet.right + 1 || box.bottom > sheet.bottom + 1;
      if (over) cut.push(text);
    }
    return { outside, cut, inside };
  }, sheets);
