/** Every screen and state of the app, one after another, as a person comes to them. */
import type { Page } from 'playwright-core';
import { again } from '../../../src/copy/again.ts';
import { back } from '../../../src/copy/back.ts';
import { before } from '../../../src/copy/before.ts';
import { boards } from '../../../src/copy/board-page.ts';
import { bringIn } from '../../../src/copy/bring-in.ts';
import { byHand, fieldProblem } from '../../../src/copy/by-hand.ts';
import { cautions } from '../../../src/copy/cautions.ts';
import { cellWords } from '../../../src/copy/cell.ts';
import { felt } from '../../../src/copy/felt.ts';
import { findGroupCopy as find } from '../../../src/copy/find-group.ts';
import { hear } from '../../../src/copy/hear.ts';
import { choiceSaid, join } from '../../../src/copy/join.ts';
import { log } from '../../../src/copy/log.ts';
import { nowCopy as now } from '../../../src/copy/now.ts';
import { paper } from '../../../src/copy/paper.ts';
import { pieces } from '../../../src/copy/pieces.ts';
import { records } from '../../../src/copy/records.ts';
import { running, wrong } from '../../../src/copy/running.ts';
import { settings } from '../../../src/copy/settings.ts';
import { tell } from '../../../src/copy/tell.ts';
import { welcome } from '../../../src/copy/welcome.ts';
import { desk, details, sendOwn, shelf, week } from '../../../src/copy/workshop.ts';
import { seconds } from './journey.ts';
import type { Site } from './site.ts';
import { leadAll, waitTogether, whatManyTold } from './tour-leading.ts';
import {
  button,
  followMarshMile,
  go,
  goOn,
  moveTo,
  openFile,
  openSession,
  rate,
  SEVERAL,
  start,
  visit,
} from './visit.ts';

/** Called at each stop; `running` says that it is seen outdoors, on the move. */
export type Stop = (name: string, running: boolean) => Promise<void>;

/**
 * @param page a page of a new profile
 * @param appearance dark by choice is dark while running too
 */
export async function tour(
  page: Page,
  site: Site,
  stop: Stop,
  appearance: 'light' | 'dark' = 'light',
): Promise<void> {
  await visit(page, site);
  await go(page, '/settings');
  const name = new RegExp(`^${settings.appearances[appearance][0]}`);
  await page.getByRole('radio', { name }).check();
  await go(page, '/start');
  await beforeASession(page, stop);
  await whileItRuns(page, stop);
  await afterwards(page, stop);
  await leadAll(page, stop);
  await whatManyTold(page, stop);
}

async function beforeASession(page: Page, stop: Stop): Promise<void> {
  await page.getByText(welcome.what).waitFor();
  await stop('welcome', false);
  await openFile(page, 'programme.json', '{ "format": "towpath-programme/1" }');
  await page.getByText(join.refused).waitFor();
  await stop('file refused', false);
  await atTheDesk(page, stop);
  await go(page, '/start');
  await openFile(page, 'marsh-mile.json');
  await button(page, choiceSaid('keep', 'new', 1).name).waitFor();
  await stop('programme, not kept yet', false);
  await go(page, '/start');
  await followMarshMile(page);
  await page.getByRole('heading', { name: now.title, exact: true }).waitFor();
  await stop('weeks', false);
  await page.getByText(now.pause, { exact: true }).click();
  await stop('weeks, a pause asked for', false);
  await findAGroup(page, stop);
  for (const path of ['/back', '/event/marsh-mile', '/tell/marsh-mile', '/records']) {
    await go(page, path);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await seconds(0.4);
    await stop(`${path}, nothing done yet`, false);
  }
  await go(page, '/p/marsh-mile/groups');
  await page.getByText('Sessions of a minute').waitFor();
  await stop('groups', false);
  await go(page, `/p/marsh-mile/${SEVERAL.week}/${SEVERAL.session}`);
  await button(page, before.readFirst).waitFor();
  await stop('session, cautions not read', false);
  await button(page, before.readFirst).click();
  await button(page, cautions.read).waitFor();
  await stop('cautions', false);
  await button(page, cautions.read).click();
  await button(page, before.checkFirst).waitFor();
  await stop('session, phone not checked', false);
  await button(page, before.checkFirst).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await stop('pocket check', false);
  for (const path of ['settings', 'install', 'about', 'done', 'nowhere/at/all']) {
    await go(page, `/${path}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await seconds(0.4);
    await stop(path.replaceAll('/', ' '), false);
  }
  await openSession(page, SEVERAL);
  await stop('session, ready', false);
  await page.getByRole('link', { name: before.hearFirst }).click();
  await page.getByText(hear.saidHelp).waitFor();
  await stop('session, heard beforehand', false);
  await openSession(page, SEVERAL);
  await waitTogether(page, stop);
  await openSession(page, SEVERAL);
}

async function findAGroup(page: Page, stop: Stop): Promise<void> {
  await go(page, '/p/marsh-mile/find');
  await page.getByText(find.notYet).waitFor();
  await stop('find my group, asked', false);
  const sets = page.getByRole('group');
  for (const [n, name] of ['About 20 min', 'Not yet', find.wishes.mix, find.gentlyYes].entries())
    await sets.nth(n).getByText(name, { exact: true }).click();
  await page.getByRole('heading', { name: / would suit you$/ }).waitFor();
  await stop('find my group, answered', false);
}

/** The leader's pages, with a programme that has a gap and a mistake in it. */
async function atTheDesk(page: Page, stop: Stop): Promise<void> {
  await go(page, '/lead');
  await page.getByRole('heading', { level: 1, name: shelf.title }).waitFor();
  await stop('lead, nothing yet', false);
  await button(page, shelf.example).click();
  await page.getByRole('table', { name: desk.table }).waitFor();
  await stop('desk', false);
  const at = new URL(page.url()).hash.slice(1);
  await page.getByRole('link', { name: new RegExp(`^${desk.cell(2, 'Curlew', 1, 1)}`) }).click();
  const field = page.getByLabel(cellWords.text);
  await field.waitFor();
  await stop('one session', false);
  await page.getByText(pieces.title, { exact: true }).click();
  await page.locator('details[open] > summary', { hasText: pieces.title }).waitFor();
  await seconds(0.4);
  await stop('one session, tapped together', false);
  await field.fill('5 min easy walk; 6 x (3 min rnu, 1 min walk); 5 min easy walk');
  await seconds(0.3);
  await stop('one session, with a mistake', false);
  await go(page, `${at}/week/3`);
  await page.getByLabel(week.focus).waitFor();
  await stop('one week', false);
  await go(page, `${at}/details`);
  await page.getByLabel(details.name).waitFor();
  await stop('details', false);
  await go(page, `${at}/send`);
  await page.getByRole('heading', { level: 1, name: sendOwn.notYet }).waitFor();
  await stop('not to be sent yet', false);
  await go(page, `${at}/1/curlew/1/hear`);
  await page.getByText(hear.saidHelp).waitFor();
  await stop('hear it', false);
  await go(page, `${at}/draft`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await stop('draft, asked', false);
  await go(page, `${at}/paper`);
  await button(page, paper.print).waitFor();
  await stop('on paper', false);
  await go(page, '/lead');
  await page.getByRole('heading', { name: shelf.mine }).waitFor();
  await stop('lead', false);
  await whatCameBack(page, stop);
}

/** On a phone that has sent nothing and has no keys: what a leader sees first, and who is none. */
async function whatCameBack(page: Page, stop: Stop): Promise<void> {
  await go(page, '/board');
  await page.getByRole('heading', { name: bringIn.noKeys.title }).waitFor();
  await page.getByText(boards.none).waitFor();
  await stop('what came back, nothing sent yet', false);
  await go(page, '/answer/AQabc');
  await page.getByRole('heading', { level: 1, name: bringIn.forLeader.title }).waitFor();
  await stop('an answer for a leader', false);
}

async function whileItRuns(page: Page, stop: Stop): Promise<void> {
  await start(page);
  await stop('running, warm-up', true);
  await moveTo(page, 75);
  await button(page, running.walkNow).waitFor();
  await stop('running', true);
  await button(page, running.walkNow).click();
  await button(page, running.undoWalk).waitFor();
  await stop('running, undo', true);
  await button(page, running.oneMore).click();
  await page.getByRole('heading', { name: running.oneMoreTitle }).waitFor();
  await stop('one minute more', true);
  await button(page, running.hold).click();
  await button(page, running.goOn).waitFor();
  await stop('holding', true);
  await button(page, running.wrong).click();
  await button(page, wrong.alright).waitFor();
  await stop('something is wrong', true);
  await button(page, wrong.alright).click();
  await button(page, running.goOn).click();
  await page.evaluate(() => document.querySelector('audio')?.pause());
  await page.getByRole('heading', { name: running.interruptedTitle }).waitFor();
  await stop('interrupted', true);
  await seconds(4);
  await page.evaluate(() => document.querySelector('audio')?.play());
  await page.getByRole('heading', { name: running.gapTitle }).waitFor();
  await stop('gap', true);
  await button(page, running.gapCatchUp).click();
  await page.evaluate(() => {
    const audio = document.querySelector('audio');
    if (audio) audio.playbackRate = 0;
  });
  await page.getByRole('heading', { name: running.stalledTitle }).waitFor();
  await stop('stalled', true);
  await goOn(page);
  await button(page, running.more).click();
  await button(page, running.skip).waitFor();
  await stop('more', true);
  await button(page, running.watch).click();
  await page.locator('main.watch').waitFor();
  await stop('watching', true);
  await go(page, '/settings');
  await page.getByRole('link', { name: 'Back to it' }).waitFor();
  await stop('settings, session under way', false);
  await page.getByRole('link', { name: 'Back to it' }).click();
  await page.locator('main.run').waitFor();
}

async function afterwards(page: Page, stop: Stop): Promise<void> {
  await button(page, running.more).click();
  await page.getByRole('button', { name: running.end }).click();
  await stop('ending', true);
  await button(page, running.endYes).click();
  await page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  await stop('how hard', false);
  await rate(page, 7);
  await page.getByText(felt.warningBox).click();
  await page.getByText(felt.niggleYes).click();
  await page.getByLabel(felt.note).fill('Wind from the sea');
  await stop('how hard, answered', false);
  await button(page, felt.save).click();
  await page.getByRole('heading', { level: 1, name: /20\d\d/ }).waitFor();
  await stop('one done', false);
  const entry = /#\/done\/([^/]+)$/.exec(page.url())?.[1] ?? '';
  await page.getByRole('link', { name: log.edit }).click();
  await page.getByRole('heading', { level: 1, name: byHand.titleEdit }).waitFor();
  await stop('put right', false);
  await page.goBack();
  await page.getByRole('button', { name: log.remove }).click();
  await page.getByRole('heading', { name: log.removeTitle }).waitFor();
  await stop('removing', false);
  await page.getByRole('button', { name: log.removeNo }).click();
  await go(page, '/done/new');
  await page.getByLabel(byHand.date).fill('2030-01-01');
  await page.getByText(fieldProblem('date-future')).waitFor();
  await stop('written by hand, a day to come', false);
  await go(page, '/done');
  await page.getByText('Week 1, session 2').first().waitFor();
  await stop('all done', false);
  await lookingBack(page, stop, entry);
}

/** What comes after sessions, with one that had a warning sign and one that was written by hand. */
async function lookingBack(page: Page, stop: Stop, entry: string): Promise<void> {
  await go(page, '/p/marsh-mile');
  await page.getByText(cautions.notAdvice).waitFor();
  await stop('weeks, after a warning sign', false);
  await go(page, '/done/new/marsh-mile/1/1');
  await page.getByRole('heading', { level: 1, name: byHand.title }).waitFor();
  await button(page, byHand.next).click();
  await page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  await rate(page, 5);
  await button(page, felt.save).click();
  await page.getByRole('heading', { level: 1, name: /20\d\d/ }).waitFor();
  await go(page, `/felt/${entry}/again`);
  await page.getByRole('heading', { level: 1, name: again.title }).waitFor();
  await stop('asked again', false);
  await go(page, '/back');
  await page.getByRole('heading', { level: 1, name: back.title }).waitFor();
  for (const summary of await page.locator('summary').all()) await summary.click();
  await seconds(0.4);
  await stop('look back', false);
  await go(page, '/event/marsh-mile');
  await page.getByRole('heading', { level: 1, name: /^Towards/ }).waitFor();
  await stop('towards the event, after a warning sign', false);
  await go(page, '/tell/marsh-mile');
  await button(page, tell.look).waitFor();
  await stop('tell the leader', false);
  await button(page, tell.look).click();
  await page.getByRole('heading', { level: 1, name: tell.reviewTitle }).waitFor();
  await stop('what will be sent', false);
  await go(page, '/records');
  await button(page, records.saveBackup).waitFor();
  await stop('keep and move', false);
}
