import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { leadDay, leading } from '../../src/copy/lead-day.ts';
import { desk, shelf } from '../../src/copy/workshop.ts';
import { arrived, atTheTop, focusedText } from '../drivers/browser/focus.ts';
import { journey } from '../drivers/browser/journey.ts';
import { press } from '../drivers/browser/keys.ts';
import { button, go, visit } from '../drivers/browser/visit.ts';

journey(
  'REAL-41 a keyboard alone suffices to start all groups, hold them and call for help',
  async (j) => {
    const { page } = j;
    await visit(page, j.site);
    await go(page, '/lead');
    await arrived(page, shelf.title);
    await press(page, shelf.example);
    await page.getByRole('table', { name: desk.table }).waitFor();
    await press(page, desk.lead);
    await arrived(page, leadDay.title);
    await press(page, before.readFirst);
    await arrived(page, cautions.title);
    await press(page, cautions.read);
    await arrived(page, leadDay.title);
    await press(page, before.checkSkip);
    await button(page, leadDay.begin).waitFor();
    expect(await focusedText(page)).not.toBe('(lost)');
    await press(page, leadDay.begin);
    await page.locator('main.lead').waitFor();
    await atTheTop(page);
    await press(page, leading.holdAll);
    await expect.poll(() => focusedText(page)).toBe(leading.goOn);
    await press(page, leading.wrong);
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => focusedText(page)).toBe(leading.wrong);
  },
);
