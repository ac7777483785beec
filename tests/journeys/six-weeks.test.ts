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
import { choiceSaid } from '../../src/copy/join.ts';
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { leader } from '../drivers/browser/leader.ts';
import { button } from '../drivers/browser/visit.ts';
import { type Phone, phone } from '../drivers/browser/weeks.ts';
import { LONDON } from './rosa/common.ts';
import { theDay, weekSix } from './rosa/week-six.ts';
import { weekFive, weekFour } from './rosa/weeks-four-and-five.ts';
import { findsGroup, weekOne, weekThree, weekTwo } from './rosa/weeks-one-to-three.ts';

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
