import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { pocket } from '../../src/copy/pocket.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { button, followMarshMile, go, heard, visit } from '../drivers/browser/visit.ts';

journey(
  'REAL-22 the pocket check tells what two minutes out of sight did to the sound',
  async (j) => {
    const { page } = j;
    await visit(page, j.site);
    await followMarshMile(page);
    await go(page, '/p/marsh-mile/1/1');
    await button(page, before.readFirst).click();
    await button(page, cautions.read).click();
    await button(page, before.checkFirst).click();
    await page.locator('button[aria-disabled=false]', { hasText: pocket.start }).click();
    await page.getByText(pocket.runningBody).waitFor();
    const other = await j.newTab();
    await other.bringToFront();
    await seconds(20);
    expect(await heard(page)).toMatchObject({ hidden: true, paused: false });
    await seconds(105);
    await page.bringToFront();
    await page.getByRole('heading', { level: 1, name: pocket.resultTitle }).waitFor();
    await page.getByText(pocket.good).waitFor();
    await page.getByRole('link', { name: pocket.go }).click();
    await button(page, before.start).waitFor();
  },
);
