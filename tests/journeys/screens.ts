/** `npm run screens`: pictures of the real app at 390 x 844 for the README, into `docs/screens`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { before } from '../../src/copy/before.ts';
import { cellWords } from '../../src/copy/cell.ts';
import { draftForm, draftResult } from '../../src/copy/draft-form.ts';
import { felt } from '../../src/copy/felt.ts';
import { paper } from '../../src/copy/paper.ts';
import { pieces } from '../../src/copy/pieces.ts';
import { running, wrong } from '../../src/copy/running.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { desk, shelf } from '../../src/copy/workshop.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { seconds } from '../drivers/browser/journey.ts';
import { chooseGroups, leadStaggered } from '../drivers/browser/leading.ts';
import { openSite } from '../drivers/browser/site.ts';
import { button, go, moveTo, openSession, rate, start, visit } from '../drivers/browser/visit.ts';
import { ROOT } from '../drivers/tree.ts';

const FOLDER = join(ROOT, 'docs/screens');
/** Week 1 of the demo's second group: five minutes of walking, then walks and runs. */
const GROUP = 2;

mkdirSync(FOLDER, { recursive: true });
const site = await openSite();
const profile = newProfile();
const browser = await openBrowser(profile);
const page = await browser.tab();
const session = await browser.context.newCDPSession(page);
await size(390, 844, true);

async function picture(name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await seconds(0.4);
  const { data } = await session.send('Page.captureScreenshot', { format: 'png' });
  writeFileSync(join(FOLDER, `${name}.png`), Buffer.from(data, 'base64'));
  console.log(`${name}.png`);
}

try {
  await visit(page, site);
  await picture('01-welcome');
  await page.getByRole('link', { name: welcome.choose }).first().click();
  await page
    .getByRole('button', { name: /^Choose / })
    .first()
    .waitFor();
  await picture('02-groups');
  await page
    .getByRole('button', { name: /^Choose / })
    .nth(GROUP - 1)
    .click();
  await page.waitForURL(/#\/p\/[^/]+$/);
  await picture('03-weeks');
  const programme = /#\/p\/([^/]+)$/.exec(page.url())?.[1] ?? '';
  await openSession(page, { week: 1, session: 1 }, programme);
  await button(page, before.start).waitFor();
  await picture('04-before');
  await start(page);
  const run = await firstRun();
  await moveTo(page, run + 18);
  await button(page, running.walkNow).waitFor();
  await picture('05-run');
  await button(page, running.walkNow).click();
  await seconds(11);
  await picture('06-walk');
  await button(page, running.hold).click();
  await button(page, running.goOn).waitFor();
  await picture('07-hold');
  await button(page, running.wrong).click();
  await button(page, wrong.alright).waitFor();
  await picture('08-wrong');
  await button(page, wrong.alright).click();
  await button(page, running.goOn).click();
  await button(page, running.more).click();
  await button(page, running.watch).click();
  await moveTo(page, run + 1);
  await seconds(1);
  await picture('09-watching');
  await page.getByRole('button', { name: running.wrong }).click();
  await page.getByRole('button', { name: running.end }).click();
  await button(page, running.endYes).click();
  await page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  await rate(page, 5);
  await page.evaluate(() => window.scrollTo(0, 0));
  await picture('10-how-hard');
  await go(page, '/settings');
  await seconds(0.5);
  await picture('11-settings');
  await workshop();
  await theDay();
} finally {
  await browser.close();
  profile.remove();
  await site.close();
}

async function size(width: number, height: number, mobile: boolean): Promise<void> {
  await session.send('Emulation.setDeviceMetricsOverride', {
    width,
    height,
    deviceScaleFactor: mobile ? 2 : 1,
    mobile,
  });
}

/** The leader's half: the table on a laptop, a session and a draft on a phone, a page on paper. */
async function workshop(): Promise<void> {
  await go(page, '/lead');
  await button(page, shelf.example).click();
  await page.getByRole('table', { name: desk.table }).waitFor();
  const at = new URL(page.url()).hash.slice(1);
  await go(page, `${at}/4/dunlin/1`);
  const field = page.getByLabel(cellWords.text);
  await field.fill('5 min easy walk; 3 x (7 min jog, 1 min walk); 3 min easy walk');
  await size(1400, 900, false);
  await go(page, at);
  await seconds(0.5);
  await picture('12-desk');
  await size(390, 844, true);
  await go(page, `${at}/4/dunlin/1`);
  await page.getByText(pieces.title, { exact: true }).waitFor();
  await picture('13-cell');
  await button(page, desk.undo)
    .click({ timeout: 1000 })
    .catch(() => undefined);
  await go(page, `${at}/draft`);
  await button(page, draftForm.draft).click();
  await button(page, draftResult.take).waitFor();
  await page.getByRole('heading', { name: draftResult.weeks }).scrollIntoViewIfNeeded();
  await picture('14-draft');
  await go(page, `${at}/paper`);
  await button(page, paper.print).waitFor();
  await seconds(1);
  await page.locator('.paper-page').first().scrollIntoViewIfNeeded();
  await picture('15-paper');
}

/** All groups side by side, some minutes after the first has started. */
async function theDay(): Promise<void> {
  await chooseGroups(page);
  await leadStaggered(page);
  await moveTo(page, 545);
  await seconds(1.5);
  await picture('16-leading');
}

/** Where the first run begins, in seconds, found by looking: the plan is the demo's own. */
async function firstRun(): Promise<number> {
  for (let at = 240; at < 900; at += 20) {
    await moveTo(page, at);
    await seconds(0.6);
    if (await button(page, running.walkNow).isVisible()) return at;
  }
  throw new Error('the demo has no run in its first session');
}
