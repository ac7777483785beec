import { expect } from 'vitest';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { go, type Heard, heard, MINUTE, startOn } from '../drivers/browser/visit.ts';

journey('REAL-1 a session is heard to its end while another page is in front', async (j) => {
  await startOn(j.page, j.site, MINUTE);
  await seconds(2);
  const before = await heard(j.page);
  const other = await j.newTab();
  await other.goto('about:blank');
  await other.bringToFront();

  const seen: Heard[] = [];
  while (seen.length < 20) {
    await seconds(2);
    seen.push(await heard(j.page));
  }
  expect(seen.every(({ hidden }) => hidden)).toBe(true);
  expect(seen.every(({ paused }) => !paused)).toBe(true);
  const drift = seen.map(({ at, clock }) => at - before.at - (clock - before.clock));
  console.log(`position less clock, in ms: ${drift.map((d) => (d * 1000).toFixed(0)).join(' ')}`);
  // Both are read in one task, but the element tells a place that is up to one buffer old.
  expect(Math.max(...drift.map(Math.abs))).toBeLessThan(0.1);

  // 52 seconds of session, of which 44 and more are behind: the end comes unseen.
  await seconds(12);
  const end = await heard(j.page);
  expect(end.hidden).toBe(true);
  await j.page.bringToFront();
  await j.page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  await go(j.page, '/done');
  await j.page.getByText(log.entry(1, 1)).waitFor();
  await j.page
    .getByRole('link')
    .filter({ hasText: /20\d\d/ })
    .first()
    .click();
  await j.page.getByText('52 s of 52 s').waitFor();
});
