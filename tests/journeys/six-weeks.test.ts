/**
 * Six weeks of Rosa, who is made up, on the salt marsh: the example programme, signed and sent by
 * Imogen, with the phone's clock set by hand. All sums in here are worked by hand from the plans
 * (minutes as walked + run; load is rating times minutes; the World Health Organization's guidance
 * of 2020 counts a vigorous minute twice, and jogging and running are vigorous, walking moderate).
 *
 * Curlew week 1: 5' walk + 7 x (1' walk, 2' run) + 5' walk        17 + 14 = 31, meant 5
 * Curlew week 2: 5' walk + 6 x (3' run, 1' walk) + 5' walk        16 + 18 = 34, meant 5
 * Dunlin week 2: 5' walk + 8 x (1:15 jog, 1:45 walk) + 5' walk    24 + 10 = 34, meant 5
 * Dunlin week 3, first: 5' + 10 x (1:15 jog, 1:15 walk) + 5'      22.5 + 12.5 = 35, meant 5.5
 * Wren week 3, first: 5' + 5 x (4' brisk, 1' walk) + 5'           35 + 0 = 35, meant 5.5
 * Wren week 4, revised: 5' + 4 x (5' brisk, 2' walk) + 5'         38 + 0 = 38, meant 6
 */
import { expect } from 'vitest';
import { advice } from '../../src/copy/advice.ts';
import { back } from '../../src/copy/back.ts';
import { byHand } from '../../src/copy/by-hand.ts';
import { findGroupCopy as find } from '../../src/copy/find-group.ts';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid } from '../../src/copy/join.ts';
import { nowCopy } from '../../src/copy/now.ts';
import { records } from '../../src/copy/records.ts';
import { tell } from '../../src/copy/tell.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { type Leader, leader } from '../drivers/browser/leader.ts';
import { look, picture } from '../drivers/browser/six-weeks-look.ts';
import { button, go } from '../drivers/browser/visit.ts';
import {
  adviceOn,
  daysDone,
  lastFile,
  latestNumbers,
  type Phone,
  phone,
  save,
  takeAdvice,
  tellHow,
  wasThere,
  writeDown,
} from '../drivers/browser/weeks.ts';
import { openAnswer } from '../drivers/exchange/open-answer.ts';

const LONDON = 'Europe/London';
const TOKYO = 'Asia/Tokyo';
const SHIN = { place: 'shin', side: 'left' } as const;
/** What the leader makes of week 4 for Wren. */
const GENTLER = '5 min easy walk; 4 x (5 min brisk walk, 2 min walk); 5 min easy walk';

/** The latest week of every plot, under the plots' own titles. */
const numbers = (minutes: string, longest: string, felt: string, who: string, load: string) => ({
  [back.minutes.title]: minutes,
  [back.longest.title]: longest,
  [back.felt.title]: felt,
  [back.guidance.title]: who,
  [back.load.title]: load,
});

/** A group is found by questions that are about today. */
async function findsGroup({ page }: Phone): Promise<void> {
  await button(page, groups.choose('Wren')).waitFor();
  await page.getByRole('link', { name: groups.find }).click();
  for (const [question, answer] of [
    [find.walk, find.choice(30, 45)],
    [find.run, find.choice(2, 30)],
    [find.wish, find.wishes.any],
    [find.gently, find.gentlyNo],
  ] as const)
    await page
      .getByRole('group', { name: question })
      .getByRole('radio', { name: answer, exact: true })
      .check();
  await page.getByRole('heading', { name: find.answer('Curlew') }).waitFor();
  await look(page, '0-find');
  await button(page, find.take('Curlew')).first().click();
  await page.getByText(weeks.group('Curlew')).waitFor();
}

/** One session that was harder than meant moves nobody. */
async function weekOne(rosa: Phone): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-01T18:45Z', LONDON);
  expect(await adviceOn(rosa)).toMatchObject({ title: 'Go on' });
  await go(page, `/p/${rosa.programme}/1/1`);
  await look(page, '1-session');
  await wasThere(rosa, [1, 1]);
  await tellHow(page, { effort: 6 });
  await look(page, '1-felt');
  await save(page);
  await rosa.wake('2027-03-05T08:00Z', LONDON);
  await writeDown(rosa, [1, 2], ['2027-03-04', '18:00']);
  await look(page, '1-by-hand');
  await button(page, byHand.next).click();
  await tellHow(page, { effort: 7 });
  await save(page);

  const said = await adviceOn(rosa);
  expect(said.title).toBe('Go on');
  expect(said.lines[0]).toMatch(/^One session felt 2 points or more harder than meant/);
  expect(said.buttons).toEqual([]);
  await look(page, '1-advice');
  // Twice 17 + 14. 31 x 6 + 31 x 7 = 403. 34 + 2 x 28 = 90.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '1 March | 34 | 28 | 62',
      '1 March | 2:00',
      '4 March | 7: a few words at a time | 5',
      '1 March | 34 | 28 | 90',
      '1 March | 403 | 2 of 2',
    ),
  );
  await look(page, '1-back');
}

/** Twice three points above what was meant: a gentler group is advised, and taken. */
async function weekTwo(rosa: Phone): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-09T19:00Z', LONDON);
  await wasThere(rosa, [2, 1]);
  await tellHow(page, { effort: 8 });
  await save(page);
  // Thursday and Saturday go by.
  await rosa.wake('2027-03-14T12:00Z', LONDON);
  await page.getByText('1 of 2 to 3 this week.').waitFor();
  await writeDown(rosa, [2, 2], ['2027-03-14', '09:00']);
  await button(page, byHand.next).click();
  await tellHow(page, { effort: 8 });
  await save(page);

  expect(await adviceOn(rosa)).toEqual({
    title: 'Ease off for now',
    lines: [
      '2 of your last 3 sessions felt 3 points or more harder than meant.',
      'Week 2 in Dunlin would be gentler for now; the way back stays open.',
    ],
    buttons: [advice.yes.ease],
  });
  await look(page, '2-advice');
  // Twice 16 + 18. 34 x 8 x 2 = 544. 32 + 2 x 36 = 104.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '8 March | 32 | 36 | 68',
      '8 March | 3:00',
      '14 March | 8: a few words at a time | 5',
      '8 March | 32 | 36 | 104',
      '8 March | 544 | 2 of 2',
    ),
  );
  await picture(page, '2-back');
  await go(page, `/p/${rosa.programme}`);
  await takeAdvice(page, 'ease');
  await page.getByText(weeks.group('Dunlin')).waitFor();
  expect((await adviceOn(rosa)).title).toBe('Go on');
}

/** Ill in the middle of a week: a pause, rest, and a way back that is a week gentler. */
async function weekThree(rosa: Phone): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-16T19:00Z', LONDON);
  await wasThere(rosa, [3, 1]);
  await tellHow(page, { effort: 5 });
  await save(page);
  await rosa.wake('2027-03-18T07:30Z', LONDON);
  await page.locator('summary', { hasText: nowCopy.pause }).click();
  await page.getByRole('radio', { name: nowCopy.pauseWhy.illness }).check();
  await button(page, nowCopy.pause).click();
  await page.getByText('Getting well. The programme waits.').waitFor();

  const ill = await adviceOn(rosa);
  expect(ill.title).toBe('Rest');
  expect(ill.lines[1]).toMatch(/^Rest until you are well, and never go out with a fever/);
  await look(page, '3-ill');
  // 22.5 + 12.5, each shown as its nearest whole. 35 x 5 = 175. 22.5 + 2 x 12.5 = 47.5.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '15 March | 23 | 13 | 35',
      '15 March | 1:15',
      '16 March | 5: whole sentences, breath deeper | 5.5',
      '15 March | 23 | 13 | 48',
      '15 March | 175 | 1 of 1',
    ),
  );
  await picture(page, '3-back');
}

/** Back a week further down; then nine time zones east, and the days stay whose they were. */
async function weekFour(rosa: Phone, imogen: Leader): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-22T08:00Z', LONDON);
  await button(page, nowCopy.resume).click();
  // 17 to 21 March are five days. Four of them ill; week 3 had one session of two.
  await page.getByText('Welcome back after being ill: 5 days without a session.').waitFor();
  expect(await adviceOn(rosa)).toEqual({
    title: 'Welcome back',
    lines: [
      'After an illness it has been 5 days without a session.',
      'Week 2, 1 week back, is a gentle way in.',
    ],
    buttons: [advice.yes.repeat],
  });
  await look(page, '4-welcome-back');
  await takeAdvice(page, 'repeat');
  await page.getByText(weeks.session(2, 1)).first().waitFor();
  await rosa.wake('2027-03-23T21:30Z', LONDON);
  await wasThere(rosa, [2, 1]);
  await tellHow(page, { effort: 5 });
  await save(page);
  const before = await daysDone(page);
  expect(before[0]).toBe('Tue, 23 March 2027');

  // 07:34 on Saturday in Tokyo: it began at seven, when it was still Friday by UTC.
  await rosa.wake('2027-03-27T07:34+09:00', TOKYO);
  // The evening in London was the morning of the 24th by these clocks.
  expect(await daysDone(page)).toEqual(before);
  await wasThere(rosa, [2, 2]);
  await tellHow(page, { effort: 5, niggle: { ...SHIN, severity: 1 }, note: 'By the river' });
  await save(page);
  expect(await daysDone(page)).toEqual(['Sat, 27 March 2027', ...before]);
  expect(await adviceOn(rosa)).toMatchObject({ title: 'Go on', buttons: [] });

  await rosa.wake('2027-03-28T12:00+09:00', TOKYO);
  await takesUpdate(rosa, imogen);
  await look(page, '4-advice');
  // Twice 24 + 10. 34 x 5 x 2 = 340. 48 + 2 x 20 = 88.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '22 March | 48 | 20 | 68',
      '22 March | 1:15',
      '27 March | 5: whole sentences, breath deeper | 5',
      '22 March | 48 | 20 | 88',
      '22 March | 340 | 2 of 2',
    ),
  );
  await look(page, '4-back');
}

/** The leader's second revision takes the place of the first; group and log stay. */
async function takesUpdate(rosa: Phone, imogen: Leader): Promise<void> {
  const { page } = rosa;
  const before = await daysDone(page);
  await page.goto(await imogen.publishAgain(4, 'Wren', GENTLER));
  await page.getByRole('heading', { name: 'An update: revision 2' }).waitFor();
  await look(page, '4-update');
  await button(page, choiceSaid('keep', 'update', 2).name).click();
  await page.getByText(/^Revision 2, from Imogen, received Sun 12:00\.$/).waitFor();
  await page.getByText(weeks.group('Dunlin')).waitFor();
  expect(await daysDone(page)).toEqual(before);
  expect(await adviceOn(rosa)).toMatchObject({ title: 'Go on' });
}

/** The niggle is back: stop and ask, then rest, then a gentler group; never more. */
async function weekFive(rosa: Phone): Promise<void> {
  const { page } = rosa;
  // Seven on Monday in Tokyo is ten on Sunday evening by UTC: the session is of the new week.
  await rosa.wake('2027-03-29T07:35+09:00', TOKYO);
  await wasThere(rosa, [3, 1]);
  await tellHow(page, { effort: 6, niggle: { ...SHIN, severity: 2 } });
  await look(page, '5-felt-niggle');
  await save(page);
  expect(await adviceOn(rosa)).toEqual({
    title: 'Stop and ask',
    lines: [
      'The same niggle, left shin, came twice in 14 days.',
      'Leave running, ask a doctor or physiotherapist, and tell your leader before you go on.',
    ],
    buttons: [advice.asked],
  });
  await look(page, '5-stop');

  // Home, where the clocks went forward meanwhile.
  await rosa.wake('2027-03-31T18:00+01:00', LONDON);
  expect((await daysDone(page)).slice(0, 2)).toEqual(['Mon, 29 March 2027', 'Sat, 27 March 2027']);
  expect((await adviceOn(rosa)).title).toBe('Stop and ask');
  await button(page, advice.asked).click();
  const rest = await adviceOn(rosa);
  // Three whole days after the 29th.
  expect(rest).toMatchObject({ title: 'Rest', buttons: [] });
  expect(rest.lines[1]).toMatch(/^Leave running until Fri, 2 April 2027/);
  await picture(page, '5-rest');

  await rosa.wake('2027-04-03T10:00+01:00', LONDON);
  expect(await adviceOn(rosa)).toMatchObject({
    title: 'Ease off for now',
    buttons: [advice.yes.ease],
  });
  await takeAdvice(page, 'ease');
  await page.getByText(weeks.group('Wren')).waitFor();
  await rosa.wake('2027-04-03T11:35+01:00', LONDON);
  await wasThere(rosa, [3, 1]);
  await tellHow(page, { effort: 4 });
  await save(page);
  // The gentler group is taken already: nothing gentler still is proposed for the same niggle.
  expect(await adviceOn(rosa)).toMatchObject({ title: 'Ease off for now', buttons: [] });
  await look(page, '5-advice');
  // 22.5 + 35 walked, 12.5 run. 35 x 6 + 35 x 4 = 350. 57.5 + 2 x 12.5 = 82.5.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '29 March | 58 | 13 | 70',
      '29 March | 1:15',
      '3 April | 4: you chat freely, breath calm | 5.5',
      '29 March | 58 | 13 | 83',
      '29 March | 350 | 2 of 2',
    ),
  );
  await picture(page, '5-back');
}

/** A new phone between two sessions: what the old one had, once, however often it is taken in. */
async function weekSix(rosa: Phone, next: Phone): Promise<void> {
  await rosa.wake('2027-04-06T20:00+01:00', LONDON);
  await writeDown(rosa, [4, 1], ['2027-04-06', '18:00']);
  await button(rosa.page, byHand.next).click();
  await tellHow(rosa.page, { effort: 5 });
  await save(rosa.page);
  await rosa.wake('2027-04-08T09:00+01:00', LONDON);
  const before = { days: await daysDone(rosa.page), advice: await adviceOn(rosa) };
  await go(rosa.page, '/records');
  await look(rosa.page, '6-records');
  await button(rosa.page, records.saveBackup).click();
  const { name, text } = await lastFile(rosa.page);

  const { page } = next;
  await next.wake('2027-04-08T10:00+01:00', LONDON);
  next.programme = rosa.programme;
  const choose = async (): Promise<void> => {
    await go(page, '/records');
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
    await page.getByLabel(records.choose).setInputFiles(file);
    await page.getByRole('heading', { name: records.previewTitle }).waitFor();
  };
  await choose();
  await look(page, '6-restore');
  await button(page, records.take).click();
  await page.getByText(records.done).waitFor();
  await next.wake('2027-04-08T10:05+01:00', LONDON);
  expect(await daysDone(page)).toEqual(before.days);
  expect(await adviceOn(next)).toEqual(before.advice);
  await choose();
  await page.getByText(records.nothingNew).waitFor();
  expect(await button(page, records.take).count()).toBe(0);
  expect(await daysDone(page)).toEqual(before.days);

  await next.wake('2027-04-09T19:00+01:00', LONDON);
  await wasThere(next, [4, 2]);
  await tellHow(page, { effort: 5 });
  await save(page);
}

/** The day of the event: how it stands, and what Rosa tells Imogen, for Imogen alone. */
async function theDay(rosa: Phone, imogen: Leader): Promise<void> {
  const { page, programme } = rosa;
  await rosa.wake('2027-04-11T08:00+01:00', LONDON);
  await page.getByText('Heron Loop is today.').waitFor();
  expect((await adviceOn(rosa)).buttons).toEqual([]);
  await look(page, '6-advice', 'both');
  // Twice 38, all walked: 38 x 5 x 2 = 380.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '5 April | 76 | 0 | 76',
      '5 April | 0:00',
      '9 April | 5: whole sentences, breath deeper | 6',
      '5 April | 76 | 0 | 76',
      '5 April | 380 | 2 of 2',
    ),
  );
  await look(page, '6-back', 'both');
  await go(page, `/event/${programme}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await look(page, '6-event');

  await go(page, `/tell/${programme}`);
  await page.getByText(tell.sealed('Imogen')).waitFor();
  await page.getByText(tell.ticked(11, 11)).waitFor();
  await page.getByRole('checkbox', { name: tell.niggles }).check();
  await page.getByRole('checkbox', { name: tell.nameAlong }).check();
  await page.getByLabel(tell.name, { exact: true }).fill('Rosa');
  await look(page, '6-tell');
  await button(page, tell.look).click();
  await page.getByRole('heading', { name: tell.reviewTitle }).waitFor();
  await look(page, '6-tell-review');
  await button(page, tell.file).click();
  const { text } = await lastFile(page);
  await page.getByText(tell.noted(11)).waitFor();
  const link = /\S*#\/answer\/\S+/.exec(text)?.[0] ?? '';
  const opened = (await openAnswer(link, imogen.keys, imogen.passphrase)) as Told;
  expect(opened).toMatchObject({ name: 'Rosa', group: 'wren', programme: { revision: 2 } });
  expect(opened.leftOut).toBe(0);
  expect(opened.entries.map(({ localDate, week, effort }) => [localDate, week, effort])).toEqual([
    ['2027-03-01', 1, 6],
    ['2027-03-04', 1, 7],
    ['2027-03-09', 2, 8],
    ['2027-03-14', 2, 8],
    ['2027-03-16', 3, 5],
    ['2027-03-23', 2, 5],
    ['2027-03-27', 2, 5],
    ['2027-03-29', 3, 6],
    ['2027-04-03', 3, 4],
    ['2027-04-06', 4, 5],
    ['2027-04-09', 4, 5],
  ]);
  expect(opened.entries[7]).toMatchObject({ zone: TOKYO, niggle: { ...SHIN, severity: 2 } });
  // Notes were not ticked.
  expect(JSON.stringify(opened)).not.toContain('river');
}

interface Told {
  readonly leftOut: number;
  readonly entries: readonly { localDate: string; week: number; effort: number }[];
}

/** A further phone, on a profile of its own. */
async function withPhone<T>(j: Journey, use: (its: Phone) => Promise<T>): Promise<T> {
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    const page = await browser.tab();
    page.on('pageerror', (error) => expect.fail(error.message));
    return await use(await phone(page, j.site.url));
  } finally {
    await browser.close();
    profile.remove();
  }
}

journey(
  'REAL-31, REAL-32 six weeks are lived through on two phones, with an illness, a niggle that returns, an update and nine time zones, and the leader alone reads what is told',
  async (j) => {
    await withPhone(j, async (desk) => {
      const imogen = await leader(desk, j.site);
      const rosa = await phone(j.page, j.site.url);
      await rosa.wake('2027-02-28T20:00Z', LONDON);
      await rosa.page.goto(await imogen.publish());
      await button(rosa.page, choiceSaid('keep', 'new', 1).name).click();
      await rosa.page.waitForURL(/#\/p\/[^/]+\/groups$/);
      rosa.programme = /#\/p\/([^/]+)/.exec(rosa.page.url())?.[1] ?? '';
      await findsGroup(rosa);
      await weekOne(rosa);
      await weekTwo(rosa);
      await weekThree(rosa);
      await weekFour(rosa, imogen);
      await weekFive(rosa);
      await withPhone(j, async (next) => {
        await weekSix(rosa, next);
        await theDay(next, imogen);
      });
    });
  },
);
