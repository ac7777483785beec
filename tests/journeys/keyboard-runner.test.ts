import { expect } from 'vitest';
import { agreedStart } from '../../src/copy/agreed-start.ts';
import { before } from '../../src/copy/before.ts';
import { felt } from '../../src/copy/felt.ts';
import { running, watching } from '../../src/copy/running.ts';
import { arrived, atTheTop, focusedText } from '../drivers/browser/focus.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { press, tabTo } from '../drivers/browser/keys.ts';
import { button, followMarshMile, openSession, SEVERAL, visit } from '../drivers/browser/visit.ts';

const END = new RegExp(`^${running.end}`);
const LEAVE = new RegExp(`^${agreedStart.leave}`);
const GUARD = new RegExp(`^${watching.guard}`);

/** The focus is on what is called so, or comes there as soon as the page is drawn. */
const focusIsOn = (j: Journey, name: string | RegExp) =>
  expect.poll(() => focusedText(j.page)).toMatch(name);

/** Presses a key for as long as a button asks that wants to be pressed long. */
async function pressLong(j: Journey): Promise<void> {
  await j.page.keyboard.down('Enter');
  await seconds(1.2);
  await j.page.keyboard.up('Enter');
}

journey('REAL-45 a control that goes leaves the focus to the one in its place', async (j) => {
  const { page } = j;
  await visit(page, j.site);
  await followMarshMile(page);
  await openSession(page, SEVERAL);

  // A wait for an agreed time, left by the asked way.
  await press(page, agreedStart.open);
  await page.getByRole('dialog').waitFor();
  await press(page, /^Wait for/);
  await page.getByRole('button', { name: agreedStart.leave }).waitFor();
  await atTheTop(page);
  await press(page, LEAVE);
  await focusIsOn(j, agreedStart.leaveNo);
  await page.keyboard.press('Enter');
  await focusIsOn(j, LEAVE);
  await pressLong(j);
  await button(page, before.start).waitFor();

  // Skipping leads to a walk and to a run; the undo stands there while it counts.
  await press(page, before.start);
  await page.locator('main.run').waitFor();
  for (const _ of [1, 2]) {
    await press(page, running.more);
    await arrived(page, running.moreTitle);
    await press(page, running.skip);
  }
  await press(page, running.walkNow);
  await button(page, running.undoWalk).waitFor();
  await focusIsOn(j, running.oneMore);
  await tabTo(page, running.undoWalk);
  await page.keyboard.press(' ');
  await focusIsOn(j, running.hold);

  // The touch guard of the screen for the eyes alone, and the way back.
  await press(page, running.more);
  await press(page, running.watch);
  await page.locator('main.watch').waitFor();
  await atTheTop(page);
  await press(page, GUARD);
  await press(page, watching.guardOpen);
  await button(page, running.more).waitFor();
  expect(await focusedText(page)).not.toBe('(lost)');

  // A short press asks; a press of one second ends.
  await press(page, running.more);
  await press(page, END);
  await focusIsOn(j, running.endNo);
  await page.keyboard.press('Enter');
  await focusIsOn(j, END);
  await pressLong(j);
  await arrived(page, felt.title);
});
