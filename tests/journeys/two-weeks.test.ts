/**
 * Two weeks of a leader and five participants on six phones, all of them made up: the example
 * programme signed and sent; answers back by link, by file and in a pasted chat; the board; who
 * needs a word; the decision for week three, published and received. All sums are worked by hand.
 *
 * Curlew: Rosa, Pim, Tove, Anselm. Dunlin: Bibi. Both weeks are meant to feel like 5.
 * Week 1, of 2 to 3 asked for: everybody twice, at 5 and 5: as meant.
 * Week 2: Rosa 7 and 8 (middle 7.5, +2.5), Pim 7 and 7 (+2), Tove 8 and 7 (+2.5), Anselm 5 and 6
 * (+0.5); Bibi tells nothing. Of Curlew 3 of 4 found it clearly harder, nobody by three points:
 * the week is worth repeating.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { DUE_TITLE } from '../../src/copy/board-due.ts';
import { WAY } from '../../src/copy/board-next.ts';
import { boardPage } from '../../src/copy/board-page.ts';
import { bringIn, leftWords } from '../../src/copy/bring-in.ts';
import { choiceSaid } from '../../src/copy/join.ts';
import { sending } from '../../src/copy/lead.ts';
import { nextPage } from '../../src/copy/next-page.ts';
import { wordsPage } from '../../src/copy/words-page.ts';
import { ownId } from '../../src/domain/exchange/decide.ts';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { sealFor } from '../../src/platform/keys/seal.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { leader } from '../drivers/browser/leader.ts';
import { findings, stickingOut } from '../drivers/browser/look.ts';
import {
  did,
  follows,
  linkIn,
  type Participant,
  participant,
  tells,
} from '../drivers/browser/telling.ts';
import { button, go } from '../drivers/browser/visit.ts';
import { phone } from '../drivers/browser/weeks.ts';
import { sealPair } from '../drivers/exchange/answers.ts';
import { ROOT } from '../drivers/tree.ts';

const LONDON = 'Europe/London';

const PICTURES = join(ROOT, process.env.SCREENS ?? '.cache/two-weeks');

/** As it stands, at a width: nothing that axe finds, nothing that sticks out; and a picture of it. */
async function look(page: Page, name: string, width = 390): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  await page.setViewportSize({ width, height: width > 390 ? 800 : 844 });
  await expect.poll(() => stickingOut(page), { message: `${name} at ${width} px` }).toEqual([]);
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: join(PICTURES, `${name}.png`) });
  expect(await findings(page, true), name).toEqual([]);
}

/** How each of two weeks felt, session by session; nothing: no session was done. */
const FELT: Readonly<Record<string, readonly (readonly number[])[]>> = {
  Rosa: [
    [5, 5],
    [7, 8],
  ],
  Pim: [
    [5, 5],
    [7, 7],
  ],
  Tove: [
    [5, 5],
    [8, 7],
  ],
  Anselm: [
    [5, 5],
    [5, 6],
  ],
  Bibi: [[5, 5], []],
};
const NAMES = Object.keys(FELT);
const groupOf = (name: string): string => (name === 'Bibi' ? 'Dunlin' : 'Curlew');

/** Tuesday and Friday evening, then Sunday morning, of a week from 1. */
const DAYS = [
  ['2027-03-02T19:00Z', '2027-03-05T19:00Z', '2027-03-07T10:00Z'],
  ['2027-03-09T19:00Z', '2027-03-12T19:00Z', '2027-03-14T10:00Z'],
] as const;

/** A week of somebody: their sessions, and what they tell on Sunday. @returns what they sent */
const weekOf = (who: Participant, week: 1 | 2): Promise<string | undefined> =>
  who.use(async (its) => {
    const efforts = FELT[who.name]?.[week - 1] ?? [];
    const days = DAYS[week - 1] ?? [];
    for (const [n, effort] of efforts.entries())
      await did(its, [week, n + 1], days[n] ?? '', { effort });
    if (efforts.length === 0) return undefined;
    await its.wake(days[2] ?? '', LONDON);
    return tells(its, who.name);
  });

/** An answer that somebody sealed for another leader. */
async function elsewhere(site: string): Promise<string> {
  const sealed = await sealFor((await sealPair()).seal, new Uint8Array(300));
  if (!sealed.ok) throw new Error(sealed.error);
  return `${site}#/answer/${encodeAnswer(sealed.value)}`;
}

/** Pastes it, waits until it was read, and leaves the report on the page. */
async function bringsIn(page: Page, text: string): Promise<void> {
  await go(page, '/board');
  await page.getByLabel(bringIn.paste).fill(text);
  await button(page, bringIn.pasteGo).click();
  await page.getByRole('heading', { name: bringIn.done }).waitFor();
}

const sees = (page: Page, text: string): Promise<void> => page.getByText(text).first().waitFor();

/** A chat as a phone exports it: who wrote when, quoting marks, and other things in between. */
const chat = (messages: readonly string[]): string =>
  messages
    .flatMap((text, n) => [
      `07/03/2027, 18:0${n} - Someone: ${text.trim()}`,
      `07/03/2027, 18:0${n} - Someone: What a sunset over the sea wall!`,
    ])
    .join('\n');

/** What a person's row says of a week, as it is read out. */
async function cellOf(page: Page, name: string, week: number): Promise<string> {
  const row = page.getByRole('row').filter({ has: page.getByRole('link', { name, exact: true }) });
  const marks = row
    .getByRole('cell')
    .nth(week - 1)
    .getByRole('img');
  return (await marks.getAttribute('aria-label')) ?? '';
}

/** Week one comes back by a link, by a file and by a chat with all that a chat has in it. */
async function firstSunday(page: Page, j: Journey, sent: readonly string[], programme: string) {
  const [rosa = '', pim = '', ...others] = sent;
  await page.goto(linkIn(rosa));
  await sees(page, bringIn.takenLine(1, 1, 2));
  expect(page.url()).toBe(`${j.site.url}#/answer`);
  await page
    .getByLabel(bringIn.files)
    .setInputFiles({ name: 'pim.txt', mimeType: 'text/plain', buffer: Buffer.from(pim) });
  await sees(page, bringIn.takenLine(1, 1, 2));
  const whole = linkIn(others[0] ?? '');
  await bringsIn(
    page,
    chat([...others, rosa, await elsewhere(j.site.url), whole.slice(0, -9), programme]),
  );
  await sees(page, bringIn.takenLine(3, 3, 6));
  for (const why of ['again', 'not-for-this-key', 'damaged'] as const)
    await sees(page, leftWords(why, 1).title);
}

async function lookAtBoard(page: Page, id: string): Promise<void> {
  await page.setViewportSize({ width: 1280, height: 900 });
  await go(page, `/board/${id}`);
  await page.getByRole('table', { name: boardPage.table }).waitFor();
}

/** What the board says after week two, person by person. */
async function secondBoard(page: Page, id: string): Promise<void> {
  await lookAtBoard(page, id);
  const done = '2 sessions done, 2 to 3 asked for.';
  for (const [name, felt] of [
    ['Rosa', 'Felt 2.5 points harder than meant.'],
    ['Pim', 'Felt 2 points harder than meant.'],
    ['Tove', 'Felt 2.5 points harder than meant.'],
    ['Anselm', 'Felt 0.5 points harder than meant.'],
  ] as const) {
    expect(await cellOf(page, name, 1), name).toContain(`${done} Felt as meant.`);
    expect(await cellOf(page, name, 2), name).toContain(`${done} ${felt}`);
  }
  expect(await cellOf(page, 'Bibi', 2)).toContain('No reply yet.');
  await look(page, '17-board', 1280);
  await look(page, '17-board-phone');
}

/** Three people found it harder than meant twice: each is named with the reason. */
async function whoNeedsAWord(page: Page, id: string): Promise<void> {
  await go(page, `/board/${id}/words`);
  for (const name of ['Rosa', 'Pim', 'Tove'])
    await page
      .getByRole('list', { name: wordsPage.tagsOf(name) })
      .getByText(DUE_TITLE.harder)
      .waitFor();
  expect(await page.getByRole('list', { name: wordsPage.tagsOf('Anselm') }).count()).toBe(0);
  await look(page, '18-words');
}

/** The week is repeated for Curlew, written into the programme and sent. @returns the link */
async function decide(page: Page, id: string): Promise<string> {
  await go(page, `/board/${id}/next`);
  const curlew = page.locator('section', {
    has: page.getByRole('heading', { level: 2, name: 'Curlew', exact: true }),
  });
  await curlew.getByText(WAY.repeat, { exact: true }).first().waitFor();
  await curlew.getByText('3 of 4 who rated found it 2 points or more harder than meant.').waitFor();
  await curlew.scrollIntoViewIfNeeded();
  await look(page, '19-next-week');
  await button(page, nextPage.take(3, 'Curlew')).click();
  await curlew.getByText(nextPage.inIt(WAY.repeat, 3, 'Curlew')).waitFor();
  await page.getByRole('link', { name: nextPage.send }).click();
  const change = page.getByLabel(sending.change);
  expect(await change.inputValue()).toBe('Week 3: Curlew is changed.');
  await button(page, sending.publish).click();
  await page.getByText(sending.sheetSub(2, true)).waitFor();
  return page.getByLabel(sending.linkTitle, { exact: true }).inputValue();
}

journey(
  'REAL-33 five people tell of two weeks by link, by file and in a chat; the leader sees who needs a word, and the decision for week three reaches them',
  async (j) => {
    const desk = await phone(j.page, j.site.url);
    await desk.wake('2027-02-27T10:00Z', LONDON);
    const imogen = await leader(desk, j.site);
    const link = await imogen.publish();
    const people = NAMES.map((name) => participant(name, j.site));
    try {
      for (const who of people)
        await who.use(async (its) => {
          await its.wake('2027-02-28T20:00Z', LONDON);
          await follows(its, link, groupOf(who.name));
        });
      const id = ownId(people[0]?.programme ?? '');
      const first: string[] = [];
      for (const who of people) first.push((await weekOf(who, 1)) ?? '');
      await desk.wake('2027-03-07T18:00Z', LONDON);
      await firstSunday(desk.page, j, first, link);

      const second: string[] = [];
      for (const who of people) second.push((await weekOf(who, 2)) ?? '');
      await desk.wake('2027-03-14T18:00Z', LONDON);
      await bringsIn(desk.page, chat(second.filter((text) => text !== '')));
      await sees(desk.page, bringIn.takenLine(4, 4, 8));
      await secondBoard(desk.page, id);
      await whoNeedsAWord(desk.page, id);
      const next = await decide(desk.page, id);

      const [rosa] = people;
      await rosa?.use(async (its) => {
        await its.wake('2027-03-14T20:00Z', LONDON);
        await its.page.goto(next);
        await sees(its.page, 'Week 3: Curlew is changed.');
        await button(its.page, choiceSaid('keep', 'update', 2).name).click();
        await its.page.getByText(/^Revision 2, from Imogen, received /).waitFor();
        await go(its.page, `/p/${its.programme}/3/1`);
        await sees(its.page, 'Tall, not fast');
      });
    } finally {
      for (const who of people) who.remove();
    }
  },
);
