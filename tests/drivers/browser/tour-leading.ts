/** The leader's pages after sending: all groups led at once, and what came back of many people. */
import type { Page } from 'playwright-core';
import { agreedStart } from '../../../src/copy/agreed-start.ts';
import { attendance } from '../../../src/copy/attendance.ts';
import { boardPage } from '../../../src/copy/board-page.ts';
import { leading } from '../../../src/copy/lead-day.ts';
import { nextPage } from '../../../src/copy/next-page.ts';
import { wordsPage } from '../../../src/copy/words-page.ts';
import { people, TWELVE } from '../board/club.ts';
import { storeClub } from './club.ts';
import { chooseGroups, leadStaggered } from './leading.ts';
import type { Stop } from './tour.ts';
import { button, go, look } from './visit.ts';

/** A time of day in a quarter of an hour, as a field has it. */
export function soon(): string {
  const at = new Date(Date.now() + 15 * 60_000);
  return at.toTimeString().slice(0, 5);
}

/** On a phone that is ready to start a session. Leaves nothing under way. */
export async function leadAll(page: Page, stop: Stop): Promise<void> {
  await chooseGroups(page);
  await stop('who is led', false);
  await leadStaggered(page);
  await stop('leading', true);
  await look(page);
  await button(page, leading.holdAll).click();
  await button(page, leading.goOn).waitFor();
  await stop('leading, all on hold', true);
  await button(page, leading.wrong).click();
  await page.getByRole('dialog').waitFor();
  await stop('leading, something is wrong', true);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: leading.end }).click();
  await page.getByRole('button', { name: 'Yes, end it' }).click();
  await page.getByRole('heading', { level: 1, name: leading.over.ended }).waitFor();
  await stop('led', false);
}

/** A start agreed ahead, on the page of a session that can be started. Leaves the wait. */
export async function waitTogether(page: Page, stop: Stop): Promise<void> {
  await button(page, agreedStart.open).click();
  const time = soon();
  await page.getByLabel(agreedStart.time).fill(time);
  await stop('a start agreed on', false);
  await button(page, agreedStart.wait(time)).click();
  await page.getByRole('heading', { level: 1, name: agreedStart.startsAt(time) }).waitFor();
  await stop('waiting for the start', true);
  await look(page);
  await page.getByRole('button', { name: agreedStart.leave }).click();
  await stop('leaving the wait', true);
  await page.getByRole('button', { name: agreedStart.leaveYes }).click();
}

const MEMBERS = 14;

/** From here on it is Sunday of week 11 of the club's twelve. */
export async function whatManyTold(page: Page, stop: Stop): Promise<void> {
  await storeClub(page, MEMBERS);
  await page.clock.setFixedTime(new Date('2027-05-16T18:00:00Z'));
  await go(page, '/lead');
  await page.reload();
  const at = `/board/${TWELVE.id}`;
  await go(page, at);
  await page.getByText(boardPage.numbers).waitFor();
  await stop('the board', false);
  await go(page, `${at}/words`);
  await page.getByText(wordsPage.lead).waitFor();
  await stop('who needs a word', false);
  await go(page, `${at}/next`);
  await page.getByText(nextPage.message).waitFor();
  await stop('next week', false);
  await go(page, `${at}/list`);
  await page.getByRole('heading', { level: 1, name: attendance.title }).waitFor();
  await stop('who came', false);
  await go(page, `${at}/keep`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await stop('keep and hand over', false);
  await go(page, `${at}/who/${people(MEMBERS)[0]?.person}`);
  await page.getByRole('heading', { level: 1, name: 'Member 0' }).waitFor();
  for (const summary of await page.locator('summary').all()) await summary.click();
  await stop('one member', false);
}
