/** A leader in a park: the example taken over, its groups chosen and started. */
import type { Page } from 'playwright-core';
import { before } from '../../../src/copy/before.ts';
import { cautions } from '../../../src/copy/cautions.ts';
import { leadDay, leading } from '../../../src/copy/lead-day.ts';
import { desk, shelf } from '../../../src/copy/workshop.ts';
import { button, go } from './visit.ts';

/** Opens "lead it together" of the example, or of a programme file. @returns its address */
export async function chooseGroups(page: Page, file?: string): Promise<string> {
  await go(page, '/lead');
  if (file === undefined) await button(page, shelf.example).click();
  else
    await page
      .getByLabel(shelf.file)
      .setInputFiles({ name: 'p.json', mimeType: 'application/json', buffer: Buffer.from(file) });
  await page.getByRole('link', { name: desk.lead }).click();
  await page.getByRole('heading', { level: 1, name: leadDay.title }).waitFor();
  return new URL(page.url()).hash.slice(1);
}

/** What stands before the first start, done. */
export async function readyToLead(page: Page): Promise<void> {
  const first = button(page, before.readFirst);
  const check = button(page, before.checkSkip);
  const start = button(page, leadDay.begin);
  for (let step = 0; step < 3; step += 1) {
    await first.or(check).or(start).first().waitFor();
    if (await start.isVisible()) return;
    if (await first.isVisible()) {
      await first.click();
      await button(page, cautions.read).click();
    } else await check.click();
  }
  await start.waitFor();
}

/** Starts all groups, two minutes after one another. */
export async function leadStaggered(page: Page): Promise<void> {
  await readyToLead(page);
  await button(page, leadDay.stagger).click();
  await button(page, leadDay.begin).click();
  await button(page, leading.holdAll).waitFor();
}
