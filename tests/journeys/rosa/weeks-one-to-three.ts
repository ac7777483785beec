/** Weeks 1 to 3: a group that was too hard, a gentler one, an illness. */
import { expect } from 'vitest';
import { advice } from '../../../src/copy/advice.ts';
import { byHand } from '../../../src/copy/by-hand.ts';
import { findGroupCopy as find } from '../../../src/copy/find-group.ts';
import { groups } from '../../../src/copy/groups.ts';
import { nowCopy } from '../../../src/copy/now.ts';
import { weeks } from '../../../src/copy/weeks.ts';
import { look, picture } from '../../drivers/browser/six-weeks-look.ts';
import { button, go } from '../../drivers/browser/visit.ts';
import {
  adviceOn,
  latestNumbers,
  type Phone,
  save,
  takeAdvice,
  tellHow,
  wasThere,
  writeDown,
} from '../../drivers/browser/weeks.ts';
import { LONDON, numbers } from './common.ts';

/** A group is found by questions that are about today. */
export async function findsGroup({ page }: Phone): Promise<void> {
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
export async function weekOne(rosa: Phone): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-01T18:45Z', LONDON);
  expect(await adviceOn(rosa)).toMatchObject({ title: 'To begin with' });
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
export async function weekTwo(rosa: Phone): Promise<void> {
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
export async function weekThree(rosa: Phone): Promise<void> {
  const { page } = rosa;
  await rosa.wake('2027-03-16T19:00Z', LONDON);
  await wasThere(rosa, [3, 1]);
  await tellHow(page, { effort: 5 });
  await save(page);
  await rosa.wake('2027-03-18T07:30Z', LONDON);
  await page.locator('summary', { hasText: nowCopy.pause }).click();
  await page.getByRole('radio', { name: nowCopy.pauseWhy.illness }).check();
  // It began the day before.
  await page.getByLabel(nowCopy.pauseSince, { exact: true }).fill('2027-03-17');
  await button(page, nowCopy.pauseBegin).click();
  const ill =
    'Getting well. The programme waits. Rest until you are well, and never go out with a fever.';
  await page.getByText(ill, { exact: true }).waitFor();
  // Nothing asks for a session, and there is nothing to decide but to be back.
  await page.getByText(nowCopy.waits, { exact: true }).waitFor();
  expect(await page.locator('section[aria-labelledby=advice]').count()).toBe(0);
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
