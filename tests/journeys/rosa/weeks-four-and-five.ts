/** Weeks 4 and 5: back after the illness, nine time zones away and home, and a niggle that returns. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { advice } from '../../../src/copy/advice.ts';
import { choiceSaid } from '../../../src/copy/join.ts';
import { nowCopy } from '../../../src/copy/now.ts';
import { weeks } from '../../../src/copy/weeks.ts';
import type { Leader } from '../../drivers/browser/leader.ts';
import { look, picture } from '../../drivers/browser/six-weeks-look.ts';
import { button } from '../../drivers/browser/visit.ts';
import {
  adviceOn,
  daysDone,
  latestNumbers,
  type Phone,
  save,
  takeAdvice,
  tellHow,
  wasThere,
} from '../../drivers/browser/weeks.ts';
import { LONDON, numbers, SHIN, TOKYO } from './common.ts';

/** What the leader makes of week 4 for Wren. */
const GENTLER = '5 min easy walk; 4 x (5 min brisk walk, 2 min walk); 5 min easy walk';

/** Back a week further down; then nine time zones east, and the days stay whose they were. */
export async function weekFour(rosa: Phone, imogen: Leader): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-22T08:00Z', LONDON);
  await button(page, nowCopy.resume).click();
  // 17 to 21 March are five days, all of them ill: a week back from week 3, which had one session.
  await page
    .getByText(
      'Welcome back after being ill: 5 days without a session. Week 2, 1 week back, is a gentle way in.',
    )
    .waitFor();
  expect(await adviceOn(rosa)).toEqual({
    title: 'Welcome back',
    lines: [],
    buttons: [advice.comeBack(2)],
  });
  await look(page, '4-welcome-back');
  await button(page, advice.comeBack(2)).click();
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

/** With something in the way, no session is asked for and nothing is told as missed. */
async function nothingAsks(page: Page): Promise<void> {
  await page.getByText(nowCopy.waits, { exact: true }).waitFor();
  expect(await page.locator('.button.primary').count()).toBe(0);
  expect(
    await page
      .getByText(/this week/)
      .filter({ hasNotText: /times this week/ })
      .count(),
  ).toBe(0);
}

/** The niggle is back: stop and ask, then rest, then a gentler group; never more. */
export async function weekFive(rosa: Phone): Promise<void> {
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
    buttons: [],
  });
  await nothingAsks(page);
  await look(page, '5-stop');

  // Home, where the clocks went forward meanwhile.
  await rosa.wake('2027-03-31T18:00+01:00', LONDON);
  expect((await daysDone(page)).slice(0, 2)).toEqual(['Mon, 29 March 2027', 'Sat, 27 March 2027']);
  expect(await adviceOn(rosa)).toMatchObject({ title: 'Stop and ask', buttons: [advice.asked] });
  await nothingAsks(page);
  await button(page, advice.asked).click();
  await button(page, advice.asked).waitFor({ state: 'detached' });
  const rest = await adviceOn(rosa);
  // Three whole days after the 29th.
  expect(rest).toMatchObject({ title: 'Rest', buttons: [] });
  expect(rest.lines[1]).toMatch(/^Leave running until Fri, 2 April 2027/);
  await nothingAsks(page);
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
