import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { byHand, fieldProblem, there } from '../../src/copy/by-hand.ts';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import {
  button,
  followMarshMile,
  go,
  MINUTE,
  openSession,
  rate,
  visit,
} from '../drivers/browser/visit.ts';

const facts = async (page: Page): Promise<string> =>
  (await page.locator('dl.pairs').innerText()).replace(/\s+/g, ' ');
const title = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();
/** The day so many days ago as the browser's clock has it, ISO 8601. */
const daysAgo = (page: Page, days: number): Promise<string> =>
  page.evaluate((n) => {
    const day = new Date(Date.now() - n * 86_400_000);
    const two = (part: number): string => String(part).padStart(2, '0');
    return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  }, days);

journey(
  'FELT-7 what is written by hand, answered, put right and removed survives a kill',
  async (j) => {
    const { site } = j;
    await visit(j.page, site);
    await followMarshMile(j.page);

    // With the group: one tap, then the rating.
    await openSession(j.page, MINUTE);
    await button(j.page, there.was).click();
    await title(j.page, felt.title);
    await rate(j.page, 6);
    await j.page.getByText(felt.niggleYes).click();
    await j.page.getByText('Knee', { exact: true }).click();
    await j.page.getByText(felt.severities[2][0]).click();
    await j.page.getByLabel(felt.distance).fill('40');
    await button(j.page, felt.save).click();
    await j.page.getByText(fieldProblem('distance-fast')).waitFor();
    await j.page.getByLabel(felt.distance).fill('0,2');
    await button(j.page, felt.save).click();
    await title(j.page, /20\d\d/);
    expect(await facts(j.page)).toMatch(/With the group.*0\.2 km.*6: .*Knee, changed how I moved/);

    // By hand, three days ago; a day to come is caught.
    await go(j.page, '/done/new');
    await j.page.getByLabel(byHand.date).fill(await daysAgo(j.page, -1));
    await j.page.getByLabel(byHand.time).fill('07:15');
    await button(j.page, byHand.next).click();
    await j.page.getByText(fieldProblem('date-future')).waitFor();
    await j.page.getByLabel(byHand.date).fill(await daysAgo(j.page, 3));
    await button(j.page, byHand.next).click();
    await title(j.page, felt.title);
    await j.page.getByRole('link', { name: felt.doneChange }).click();
    await j.page.getByLabel(byHand.time).fill('08:20');
    await button(j.page, byHand.save).click();
    await title(j.page, /20\d\d/);
    expect(await facts(j.page)).toMatch(/When 08:20.*Written down by hand/);

    // A third, removed again.
    await go(j.page, '/done/new');
    await j.page.getByLabel(byHand.date).fill(await daysAgo(j.page, 5));
    await button(j.page, byHand.next).click();
    await title(j.page, felt.title);
    await j.page.getByRole('link', { name: felt.later }).click();
    await title(j.page, log.title);
    await j.page.getByRole('article').nth(2).getByRole('link').click();
    await button(j.page, log.remove).click();
    await button(j.page, log.removeYes).click();
    await title(j.page, log.title);
    const rows = () => j.page.getByRole('article').allInnerTexts();
    const before = await rows();
    expect(before).toHaveLength(2);

    await seconds(1);
    await j.kill();
    await j.restart();
    await j.page.goto(`${site.url}#/done`);
    await j.page.getByRole('article').nth(1).waitFor();
    expect(await rows()).toEqual(before);
    await j.page.getByRole('article').nth(1).getByRole('link').click();
    await title(j.page, /20\d\d/);
    expect(await facts(j.page)).toMatch(/When 08:20/);
  },
);
