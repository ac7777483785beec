import { expect } from 'vitest';
import { common } from '../../src/copy/common.ts';
import { type Journey, journey, seconds } from '../drivers/browser/journey.ts';
import { lookForUpdate, nextVersion } from '../drivers/browser/next-version.ts';
import { button, go, heard, MINUTE, SEVERAL, startOn, visit } from '../drivers/browser/visit.ts';

function publish({ site }: Journey): void {
  for (const [path, body] of Object.entries(nextVersion())) site.replace(`/${path}`, body);
}

const isNext = (j: Journey): Promise<boolean> =>
  j.page.evaluate(() => document.querySelector('meta[name=version]') !== null);

journey('REAL-13 an update that waits is offered, and taken after a yes', async (j) => {
  await visit(j.page, j.site);
  publish(j);
  await lookForUpdate(j.page);
  await j.page.getByText(common.update.waiting).waitFor();
  await seconds(2);
  expect(await isNext(j)).toBe(false);
  await button(j.page, common.update.apply).click();
  await j.page.locator('meta[name=version]').waitFor({ state: 'attached' });
  expect(await j.page.getByText(common.update.waiting).count()).toBe(0);
});

journey(
  'REAL-13 while a session runs an update is neither shown nor taken, here or in another tab',
  async (j) => {
    await startOn(j.page, j.site, MINUTE);
    publish(j);
    await lookForUpdate(j.page);
    const first = await heard(j.page);
    await go(j.page, '/settings');
    await j.page.getByText(common.underWay.title).waitFor();
    expect(await j.page.getByText(common.update.waiting).count()).toBe(0);

    const other = await j.newTab();
    await other.goto(`${j.site.url}#/settings`);
    await seconds(2);
    expect(await other.getByText(common.update.waiting).count()).toBe(0);
    const then = await heard(j.page);
    expect(then.at - first.at).toBeCloseTo(then.clock - first.clock, 0);
    await other.close();

    await j.page.bringToFront();
    await j.page.waitForURL(/#\/felt\//, { timeout: 60_000 });
    expect(await isNext(j)).toBe(false);
    await j.page.getByText(common.update.waiting).waitFor();
    await button(j.page, common.update.apply).click();
    await j.page.locator('meta[name=version]').waitFor({ state: 'attached' });
  },
);

journey(
  'REAL-13 a session that was begun is not cut by an update taken in another tab',
  async (j) => {
    await visit(j.page, j.site);
    publish(j);
    await lookForUpdate(j.page);
    const runner = await j.newTab();
    await startOn(runner, j.site, SEVERAL);
    await seconds(1);
    const first = await heard(runner);
    // The offer stood in the first tab from before: whoever comes back to it finds it withdrawn.
    await j.page.bringToFront();
    await j.page.getByText(common.update.waiting).waitFor({ state: 'detached' });
    await seconds(2);
    expect(await isNext(j)).toBe(false);
    const then = await heard(runner);
    expect(then.at - first.at).toBeCloseTo(then.clock - first.clock, 0);
  },
);
