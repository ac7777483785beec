import { mkdirSync } from 'node:fs';
import { join as path } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { cellWords } from '../../src/copy/cell.ts';
import { draftForm, draftResult } from '../../src/copy/draft-form.ts';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid, join, verdictSaid } from '../../src/copy/join.ts';
import { leaderKeys, sending } from '../../src/copy/lead.ts';
import { log } from '../../src/copy/log.ts';
import { running } from '../../src/copy/running.ts';
import { desk, details, shelf } from '../../src/copy/workshop.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { journey } from '../drivers/browser/journey.ts';
import { findings, stickingOut } from '../drivers/browser/look.ts';
import { button, go, openSession, start, visit } from '../drivers/browser/visit.ts';
import { ROOT } from '../drivers/tree.ts';

const TITLE = 'A spring on the marsh';
/** So long that its code comes in parts. */
const WEEKS = 12;
/** What the leader makes of Dunlin's first session. */
const SHORT = '5 min easy walk; 5 x (1 min easy jog, 2 min walk); 5 min easy walk';
/** What week 2 becomes for Dunlin in the second revision. */
const GENTLER = '5 min easy walk; 4 x (1 min easy jog, 3 min walk); 5 min easy walk';
const PICTURES = path(ROOT, '.cache/exchange');

/** As it is, on the phone and on a desk: nothing that axe finds, nothing that sticks out. */
async function look(page: Page, name: string): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  for (const width of [1200, 320, 390]) {
    await page.setViewportSize({ width, height: 844 });
    // Strips take the new width a moment after the page has it.
    await expect.poll(() => stickingOut(page), { message: `${name} at ${width} px` }).toEqual([]);
    if (width !== 320)
      await page.screenshot({ path: path(PICTURES, `${name}-${width}.png`), fullPage: true });
  }
  expect(await findings(page, true), name).toEqual([]);
}

/** On paper stand the title, every part of the code and the link, and nothing to press. */
async function lookAtPaper(page: Page): Promise<void> {
  await page.emulateMedia({ media: 'print' });
  for (const code of await page.locator('.code').all()) expect(await code.isVisible()).toBe(true);
  expect(await page.locator('main button:visible, main textarea:visible').count()).toBe(0);
  await page.screenshot({ path: path(PICTURES, 'paper.png'), fullPage: true });
  await page.emulateMedia({ media: null });
}

const linkOn = (page: Page): Promise<string> =>
  page.getByLabel(sending.linkTitle, { exact: true }).inputValue();

/** The parts of the code as a person would photograph them from a screen. */
async function picturesOn(page: Page): Promise<readonly Buffer[]> {
  await page.setViewportSize({ width: 1200, height: 900 });
  const count = await page.locator('.code').count();
  const pictures: Buffer[] = [];
  for (let n = 0; n < count; n += 1) {
    pictures.push(await page.locator('.code[data-shown=true] svg').screenshot());
    if (count > 1) await button(page, sending.next).click();
  }
  await page.setViewportSize({ width: 390, height: 844 });
  return pictures;
}

/** What each group can do today, in minutes, and where it should arrive. */
const GROUPS = [
  { name: 'Wren', walk: 25, run: 0, arrive: 0 },
  { name: 'Dunlin', walk: 30, run: 2, arrive: 1 },
  { name: 'Curlew', walk: 40, run: 8, arrive: 2 },
  { name: 'Swift', walk: 60, run: 18, arrive: 2 },
] as const;

/** Answers what is asked, and takes the draft over. */
async function draft(page: Page): Promise<void> {
  await go(page, '/lead');
  await button(page, shelf.draft).click();
  await page.getByLabel(draftForm.weeks, { exact: true }).fill(String(WEEKS));
  await button(page, draftForm.add).click();
  await button(page, draftForm.add).click();
  for (const [n, { name, walk, run, arrive }] of GROUPS.entries()) {
    await page.getByLabel(draftForm.name, { exact: true }).nth(n).fill(name);
    await page.getByLabel(draftForm.walk).nth(n).fill(String(walk));
    await page.getByLabel(draftForm.run).nth(n).fill(String(run));
    await page
      .getByRole('group', { name: draftForm.arrive })
      .nth(n)
      .getByRole('radio')
      .nth(arrive)
      .check();
  }
  await look(page, 'draft-asked');
  await button(page, draftForm.draft).click();
  await button(page, draftResult.take).waitFor();
  await look(page, 'draft-proposed');
  await button(page, draftResult.take).click();
  const rows = page.getByRole('table', { name: desk.table }).getByRole('row');
  // On a phone the names of the groups stand at the sessions, and the head is not there.
  await expect.poll(() => rows.count()).toBe(WEEKS);
}

/** Names what nobody can draft: the title, the leader and the event. */
async function name(page: Page): Promise<void> {
  await page.getByRole('link', { name: desk.details }).click();
  await page.getByLabel(details.name, { exact: true }).fill(TITLE);
  await page.getByLabel(details.leader).fill('Imogen');
  await page.getByLabel(details.goal).fill('Heron Loop');
  await look(page, 'details');
  await page.getByRole('link', { name: new RegExp(desk.back) }).click();
}

/** Writes a session anew, by its week and group. */
async function write(page: Page, week: number, group: string, text: string): Promise<void> {
  const table = page.getByRole('table', { name: desk.table });
  await table
    .getByRole('link', { name: new RegExp(`^${desk.cell(week, group, 1, 1)}\\b`) })
    .click();
  await page.getByLabel(cellWords.text).fill(text);
  await page.getByRole('link', { name: new RegExp(desk.back) }).click();
}

/** Drafts, edits, makes keys, publishes. */
async function publishFirst(page: Page): Promise<void> {
  await draft(page);
  await name(page);
  await write(page, 1, 'Dunlin', SHORT);
  await look(page, 'desk');
  await page.getByRole('link', { name: desk.send }).click();
  await page.getByLabel(leaderKeys.passphrase, { exact: true }).fill('heron tide reed wind salt');
  await look(page, 'lead-keys');
  await button(page, leaderKeys.make).click();
  await button(page, sending.publish).click({ timeout: 60_000 });
  await button(page, sending.link).waitFor();
  await look(page, 'lead-send');
  await lookAtPaper(page);
}

async function endASession(page: Page): Promise<void> {
  const id = /#\/p\/([^/]+)$/.exec(page.url())?.[1] ?? '';
  await openSession(page, { week: 1, session: 1 }, id);
  await start(page);
  await button(page, running.more).click();
  await page.getByRole('button', { name: running.end }).click();
  await button(page, running.endYes).click();
  await page.waitForURL(/#\/felt\//);
}

journey(
  'REAL-29 a leader drafts, edits and publishes; someone joins by link, by pictures and by file, and keeps group and log, all offline',
  async (j) => {
    const profile = newProfile();
    const other = await openBrowser(profile);
    const page = j.watch(await other.tab());
    await visit(page, j.site);
    await visit(j.page, j.site);
    // From here on nothing comes from the network, on either side.
    await j.site.cut();
    await publishFirst(j.page);
    const link = await linkOn(j.page);
    const pictures = await picturesOn(j.page);
    expect(pictures.length).toBeGreaterThan(1);
    await j.page.getByText(sending.local).waitFor();

    await j.page.getByRole('link', { name: new RegExp(desk.back) }).click();
    await j.page.getByText(desk.sentIn(1)).first().waitFor();
    await write(j.page, 2, 'Dunlin', GENTLER);
    await j.page.getByText(desk.changedSince(1)).waitFor();
    await j.page.getByRole('link', { name: desk.send }).click();
    const change = j.page.getByLabel(sending.change);
    expect(await change.inputValue()).toBe('Week 2: Dunlin is changed.');
    await change.fill('Week 2 is gentler for Dunlin');
    await button(j.page, sending.publish).click();
    await j.page.getByText(sending.sheetSub(2, true)).waitFor();
    const second = await linkOn(j.page);

    try {
      await page.goto(link);
      const keep = button(page, choiceSaid('keep', 'new', 1).name);
      await keep.waitFor();
      expect(page.url()).toBe(`${j.site.url}#/join`);
      await look(page, 'join-new');
      await keep.click();
      await button(page, groups.choose('Dunlin')).click();
      await page.getByText(/^Revision 1, from Imogen, received /).waitFor();
      await endASession(page);

      await go(page, '/join');
      await look(page, 'join');
      for (const [n, buffer] of [...pictures].reverse().entries()) {
        const file = { name: `part-${n}.png`, mimeType: 'image/png', buffer };
        await page.getByLabel(join.file).setInputFiles(file);
        if (n + 1 < pictures.length)
          await page.getByText(join.parts(n + 1, pictures.length)).waitFor();
      }
      const same = verdictSaid({ kind: 'same' }, 1, 'Imogen');
      await page.getByRole('heading', { name: same.title }).waitFor();
      await button(page, join.leave).click();

      const buffer = Buffer.from(`A programme for you.\n\n${second}\n`);
      const file = { name: 'two.txt', mimeType: 'text/plain', buffer };
      await page.getByLabel(join.file).setInputFiles(file);
      await page.getByText('Week 2 is gentler for Dunlin').waitFor();
      await look(page, 'join-update');
      await button(page, choiceSaid('keep', 'update', 2).name).click();
      await page.getByText(/^Revision 2, from Imogen, received /).waitFor();
      await page.getByText('Group Dunlin', { exact: false }).waitFor();
      await go(page, '/done');
      await page.getByText(log.entry(1, 1)).first().waitFor();
    } finally {
      await other.close();
      profile.remove();
    }
  },
);
