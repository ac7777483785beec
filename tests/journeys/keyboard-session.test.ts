import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { exchangeWays } from '../../src/copy/came.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { felt } from '../../src/copy/felt.ts';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid, join } from '../../src/copy/join.ts';
import { running, wrong } from '../../src/copy/running.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { joinLink } from '../../src/domain/exchange/link.ts';
import { arrived, atTheTop, focusedText } from '../drivers/browser/focus.ts';
import { journey } from '../drivers/browser/journey.ts';
import { press, tabTo, typeInto } from '../drivers/browser/keys.ts';
import { visit } from '../drivers/browser/visit.ts';
import { codeOf } from '../drivers/exchange/leader.ts';
import { MARSH_MILE } from '../drivers/marsh-mile.ts';

journey('REAL-38 a keyboard alone suffices from a pasted link to a rated session', async (j) => {
  const { page } = j;
  const code = codeOf(undefined, JSON.parse(MARSH_MILE));
  await visit(page, j.site);
  await press(page, exchangeWays.join);
  await arrived(page, join.title);
  await typeInto(page, join.paste, `Here it is: ${joinLink(j.site.url, code)}`);
  await press(page, join.pasteGo);
  await press(page, choiceSaid('keep', 'new', 1).name);
  await arrived(page, groups.title);
  await press(page, groups.choose('Wren'));
  await arrived(page, 'A mile on the marsh');
  await press(page, weeks.open);
  await arrived(page, weeks.session(1, 1));

  await press(page, before.readFirst);
  await arrived(page, cautions.title);
  await press(page, cautions.read);
  await arrived(page, weeks.session(1, 1));
  await press(page, before.checkSkip);
  await page.getByRole('button', { name: before.start, exact: true }).waitFor();
  expect(await focusedText(page)).not.toBe('(lost)');
  await press(page, before.start);
  await page.locator('main.run').waitFor();
  await atTheTop(page);

  // The button that holds is the one that goes on, and stays under the finger.
  await press(page, running.hold);
  await page.getByRole('button', { name: running.goOn, exact: true }).waitFor();
  expect(await focusedText(page)).toBe(running.goOn);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: running.hold, exact: true }).waitFor();
  await press(page, running.more);
  await arrived(page, running.moreTitle);
  await page.keyboard.press('Escape');
  await expect.poll(() => focusedText(page)).toBe(running.more);
  await press(page, running.wrong);
  await page.getByRole('dialog').waitFor();
  await press(page, wrong.alright);
  await press(page, running.goOn);

  await page.waitForURL(/#\/felt\//, { timeout: 100_000 });
  await arrived(page, felt.title);
  await tabTo(page, /^10: /);
  for (let key = 0; key < 3; key += 1) await page.keyboard.press('ArrowDown');
  // Three down from 10 in the order of the page: 9, 7, 8.
  await expect.poll(() => page.getByRole('radio', { name: /^8: / }).isChecked()).toBe(true);
  await press(page, felt.save);
  await arrived(page, /20\d\d/);
  await page.getByText(/^8: /).waitFor();
});
