import { expect } from 'vitest';
import { attendance } from '../../src/copy/attendance.ts';
import { boardPage, personPage } from '../../src/copy/board-page.ts';
import { keep } from '../../src/copy/keep.ts';
import { nextPage } from '../../src/copy/next-page.ts';
import { wordsPage } from '../../src/copy/words-page.ts';
import { TWELVE } from '../drivers/board/club.ts';
import { storeClub } from '../drivers/browser/club.ts';
import { arrived, focusedText } from '../drivers/browser/focus.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { press, tabTo, typeInto } from '../drivers/browser/keys.ts';
import { go, visit } from '../drivers/browser/visit.ts';

const MEMBERS = 6;

/** Sunday of week 11 of the club's twelve. */
const TODAY = new Date('2027-05-16T18:00:00Z');

async function openBoard({ page, site }: Journey): Promise<void> {
  await visit(page, site);
  await storeClub(page, MEMBERS);
  await page.clock.setFixedTime(TODAY);
  await page.reload();
  await go(page, `/board/${TWELVE.id}`);
}

journey('REAL-46 by keyboard over the board, who needs a word and next week', async (j) => {
  const { page } = j;
  await openBoard(j);
  await page.getByText(boardPage.numbers).waitFor();
  await tabTo(page, boardPage.keep);

  // One person, and back to their line.
  await press(page, /^Member 0/);
  await arrived(page, 'Member 0');
  await press(page, /^← /);
  await page.getByText(boardPage.numbers).waitFor();
  await expect.poll(() => focusedText(page)).toMatch(/^Member 0/);

  await page.keyboard.press('Home');
  await press(page, /^Who needs a word/);
  await arrived(page, wordsPage.title);
  await press(page, /^← /);
  await arrived(page, TWELVE.title);
  await press(page, boardPage.next);
  await arrived(page, nextPage.title);
  // Taken into the programme and out of it again: the button that was pressed goes each time.
  await press(page, 'Something else, Wren');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await press(page, /^Put it into week \d+ of Wren/);
  await page.getByRole('button', { name: /^Undo it for/ }).waitFor();
  await expect.poll(() => focusedText(page)).toMatch(/^Look at it at the desk/);
  await press(page, /^Undo it for/);
  await expect.poll(() => focusedText(page)).not.toBe('(lost)');
  // All the way round the page: each place is looked at, and none is hidden.
  await tabTo(page, /^← /);
});

journey(
  'REAL-46 by keyboard a list of who came is ticked, and somebody is forgotten',
  async (j) => {
    const { page } = j;
    await openBoard(j);
    await press(page, boardPage.list);
    await arrived(page, attendance.title);
    await tabTo(page, 'Member 0');
    await page.keyboard.press('Space');
    await page.getByText(attendance.there(1)).waitFor();
    expect(await page.getByLabel('Member 0').isChecked()).toBe(true);
    await press(page, attendance.add);
    await typeInto(page, attendance.name, 'Ebba');
    await press(page, attendance.addYes);
    await page.getByText(attendance.there(2)).waitFor();
    await press(page, attendance.addDone);
    await expect.poll(() => focusedText(page)).toBe(attendance.add);
    await press(page, /^← /);
    await arrived(page, TWELVE.title);

    await press(page, boardPage.keep);
    await arrived(page, keep.title);
    await press(page, personPage.forgetGo('Ebba'));
    await press(page, personPage.forgetYes);
    await page.getByText(keep.forgotten('Ebba')).waitFor();
    await expect.poll(() => focusedText(page)).not.toBe('(lost)');
    await tabTo(page, /^← /);
  },
);
