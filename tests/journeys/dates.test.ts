/**
 * Days and weeks where clocks disagree. Walks of the example programme for Wren, so all minutes are
 * walked: week 1 has 31, week 2 has 34, week 3 has 35. Offsets and changes of clocks as in the zone database:
 * Auckland 13 hours east of UTC until 4 April 2027, Honolulu 10 west, London forward on 28 March.
 */
import { expect } from 'vitest';
import { back } from '../../src/copy/back.ts';
import { groups } from '../../src/copy/groups.ts';
import { log } from '../../src/copy/log.ts';
import { tell } from '../../src/copy/tell.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { journey } from '../drivers/browser/journey.ts';
import { look } from '../drivers/browser/six-weeks-look.ts';
import { button, go } from '../drivers/browser/visit.ts';
import {
  daysDone,
  lastFile,
  numbersOn,
  type Phone,
  phone,
  save,
  tellHow,
  type Which,
  wasThere,
} from '../drivers/browser/weeks.ts';

const LONDON = 'Europe/London';

/** A session with the group that has just ended, by the clock on the wall. */
async function walks(its: Phone, ended: string, zone: string, which: Which): Promise<void> {
  await its.wake(ended, zone);
  await wasThere(its, which);
  await tellHow(its.page, { effort: 5 });
  await save(its.page);
}

/** Week and session of the list as it stands, newest first. */
async function sessionsDone(its: Phone): Promise<readonly string[]> {
  const days = await daysDone(its.page);
  const rows = await its.page.locator('article').allInnerTexts();
  return rows.map((row, n) => `${days[n]}: ${/Week \d, session \d/.exec(row)?.[0]}`);
}

const MINUTES = back.minutes.title;

journey(
  'REAL-33 over the date line, midnight and the change of clocks every session keeps its day, its week and its place',
  async (j) => {
    const its = await phone(j.page, j.site.url);
    const { page } = its;
    await its.wake('2027-03-14T09:00+13:00', 'Pacific/Auckland');
    await page.getByRole('link', { name: welcome.choose }).first().click();
    await button(page, groups.choose('Wren')).click();
    await page.waitForURL(/#\/p\/[^/]+$/);
    its.programme = /#\/p\/([^/]+)$/.exec(page.url())?.[1] ?? '';

    // Monday morning; then ten hours later it is Sunday evening.
    await walks(its, '2027-03-15T09:31+13:00', 'Pacific/Auckland', [1, 1]);
    await walks(its, '2027-03-14T20:31-10:00', 'Pacific/Honolulu', [2, 1]);
    const crossed = [
      'Sun, 14 March 2027: Week 2, session 1',
      'Mon, 15 March 2027: Week 1, session 1',
    ];
    expect(await sessionsDone(its)).toEqual(crossed);
    expect((await numbersOn(page))[MINUTES]).toEqual([
      '15 March | 31 | 0 | 31',
      '8 March | 34 | 0 | 34',
    ]);
    await go(page, '/done');
    await page.getByRole('link', { name: 'Mon, 15 March 2027' }).click();
    await page.getByText(log.inZone('09:00', 'Pacific/Auckland')).waitFor();

    // From ten minutes to midnight on Saturday; and over the hour that was left out on Sunday.
    await walks(its, '2027-03-28T00:25Z', LONDON, [3, 1]);
    await walks(its, '2027-03-28T02:25+01:00', LONDON, [3, 2]);
    const all = [
      'Sun, 28 March 2027: Week 3, session 2',
      'Sat, 27 March 2027: Week 3, session 1',
      ...crossed,
    ];
    const minutes = ['22 March | 70 | 0 | 70', '15 March | 31 | 0 | 31', '8 March | 34 | 0 | 34'];
    expect(await sessionsDone(its)).toEqual(all);
    expect((await numbersOn(page))[MINUTES]).toEqual(minutes);

    // A clock that was put back by a week moves nothing.
    await its.wake('2027-03-21T10:00Z', LONDON);
    expect(await sessionsDone(its)).toEqual(all);
    expect((await numbersOn(page))[MINUTES]).toEqual(minutes);
    await look(page, 'dates-back');

    // The example is signed by nobody: what is told can be read by anyone, and says so.
    await its.wake('2027-03-29T10:00+01:00', LONDON);
    await go(page, `/tell/${its.programme}`);
    await page.getByText(tell.plain['no-key']).waitFor();
    await button(page, tell.look).click();
    await look(page, 'dates-plain');
    await button(page, tell.file).click();
    const { text } = await lastFile(page);
    expect(text).toMatch(
      /^To Imogen, about .*This is not sealed: anyone who sees it can read it\./,
    );
    const told = [...text.matchAll(/^- (\w+, \d+ March) 2027, (\d\d:\d\d)\./gm)];
    expect(told.map(([, day, time]) => `${day} ${time}`)).toEqual([
      'Mon, 15 March 09:00',
      'Sun, 14 March 19:57',
      'Sat, 27 March 23:50',
      'Sun, 28 March 00:50',
    ]);
  },
);
