import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attendance as words } from '../../src/copy/attendance.ts';
import { type Gallery, openGallery } from '../drivers/browser/gallery.ts';
import { onPaper, printed, wordsOnSheets } from '../drivers/browser/paper.ts';

/** The attendance list in a real browser, printed into a PDF as a printer would get it. */
let gallery: Gallery;
let page: Page;
beforeAll(async () => {
  gallery = await openGallery();
  page = gallery.page;
});
afterAll(() => gallery.close());

const LISTS = [
  { state: 'list', names: 38 },
  { state: 'list-empty', names: 0 },
  { state: 'list-large', names: 120 },
] as const;

describe.each(LISTS)('$state: $names names', ({ state, names }) => {
  beforeAll(async () => {
    await gallery.show(state);
    await page.locator('.attendance-paper').waitFor({ state: 'attached' });
  });

  it('UI-89 is no more A4 pages than its lines take', async () => {
    const { lines, heads } = await page.evaluate(() => ({
      lines: document.querySelectorAll('.attendance-block li').length,
      heads: document.querySelectorAll('.attendance-block h3').length,
    }));
    // Two columns within margins of 12 mm. A line is 7.6 mm and a group's name 11 mm; the head of
    // the first page takes 28 mm, and a line that does not fit leaves its room empty.
    const mm = (lines * 7.6 + heads * 11) / 2 + 28 + 7.6;
    // ISO 216: 210 x 297 mm are 595 x 842 points.
    expect(await printed(page)).toEqual({ pages: Math.ceil(mm / 273), sizes: ['0 0 595 842'] });
  });

  it('UI-89 prints the list and nothing else, every name, and cuts nothing off', async () => {
    const seen = await onPaper(page, async () => ({
      ...(await wordsOnSheets(page, '.attendance-paper')),
      ...(await page.evaluate(() => {
        const list = [...document.querySelectorAll('.attendance-block li')];
        return {
          named: list.filter((each) => (each.textContent ?? '').trim() !== '').length,
          boxes: list.filter((each) => each.querySelector('svg')?.checkVisibility()).length,
          lines: list.length,
        };
      })),
    }));
    expect(seen.outside).toEqual([]);
    expect(seen.cut).toEqual([]);
    expect(seen.named).toBe(names);
    expect(seen.boxes).toBe(seen.lines);
    // At least one empty line for every group.
    expect(seen.lines).toBeGreaterThan(names + 4);
  });

  it('UI-86 every row is 64 px high at least, and a name can be added', async () => {
    const rows = page.locator('.attendance-row');
    expect(await rows.count()).toBe(names);
    for (const row of (await rows.all()).slice(0, 40))
      expect((await row.boundingBox())?.height).toBeGreaterThanOrEqual(64);
    expect(await page.getByRole('button', { name: words.add }).isVisible()).toBe(true);
  });
});
