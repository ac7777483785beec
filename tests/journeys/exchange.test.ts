import { mkdirSync } from 'node:fs';
import { join as path } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid, join, verdictSaid } from '../../src/copy/join.ts';
import { lead, leaderKeys, sending } from '../../src/copy/lead.ts';
import { log } from '../../src/copy/log.ts';
import { running } from '../../src/copy/running.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { journey } from '../drivers/browser/journey.ts';
import { findings, stickingOut } from '../drivers/browser/look.ts';
import { button, go, openSession, start, visit } from '../drivers/browser/visit.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { ROOT } from '../drivers/tree.ts';

const ID = 'eight-on-the-marsh';
const programme = { ...marshProgramme(8), id: ID };
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

async function openOwn(page: Page, content: object): Promise<void> {
  const buffer = Buffer.from(JSON.stringify(content));
  const file = { name: 'mine.json', mimeType: 'application/json', buffer };
  await page.getByLabel(lead.open).setInputFiles(file);
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

/** Opens a file, makes keys, publishes. */
async function publishFirst(page: Page): Promise<void> {
  await go(page, '/lead');
  await page.getByRole('heading', { level: 1, name: lead.title }).waitFor();
  await look(page, 'lead');
  await openOwn(page, programme);
  await button(page, lead.toSend).waitFor();
  await look(page, 'lead-weeks');
  await button(page, lead.toSend).click();
  await page.getByLabel(leaderKeys.passphrase, { exact: true }).fill('heron tide reed wind salt');
  await look(page, 'lead-keys');
  await button(page, leaderKeys.make).click();
  await button(page, sending.publish).click({ timeout: 60_000 });
  await button(page, sending.link).waitFor();
  await look(page, 'lead-send');
  await lookAtPaper(page);
}

async function endASession(page: Page): Promise<void> {
  await openSession(page, { week: 1, session: 1 }, ID);
  await start(page);
  await button(page, running.more).click();
  await page.getByRole('button', { name: running.end }).click();
  await button(page, running.endYes).click();
  await page.waitForURL(/#\/felt\//);
}

journey(
  'REAL-29 a leader publishes; someone joins by link, by pictures and by file, and keeps group and log',
  async (j) => {
    await visit(j.page, j.site);
    await publishFirst(j.page);
    const link = await linkOn(j.page);
    const pictures = await picturesOn(j.page);
    expect(pictures.length).toBeGreaterThan(1);
    await j.page.getByText(sending.local).waitFor();

    await go(j.page, '/start');
    await go(j.page, '/lead');
    const shorter = { ...programme, title: 'Eight weeks, a little shorter' };
    await openOwn(j.page, shorter);
    await button(j.page, lead.toSend).click();
    await j.page.getByLabel(sending.change).fill('A new name');
    await button(j.page, sending.publish).click();
    await j.page.getByText(sending.sheetSub(2, true)).waitFor();
    const second = await linkOn(j.page);

    const profile = newProfile();
    const other = await openBrowser(profile);
    try {
      const page = await other.tab();
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
      await page.getByText('A new name').waitFor();
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
