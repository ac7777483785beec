import { expect } from 'vitest';
import { lockScreen } from '../../src/copy/lock-screen.ts';
import { running } from '../../src/copy/running.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { pressLock, shownOnLock, watchLockScreen } from '../drivers/browser/lock.ts';
import { button, heard, moveTo, SEVERAL, startOn } from '../drivers/browser/visit.ts';

journey(
  'REAL-23 the lock screen names the part, and its buttons do what they say while hidden',
  async (j) => {
    const { page } = j;
    await watchLockScreen(page);
    await startOn(page, j.site, SEVERAL);
    const other = await j.newTab();
    await other.bringToFront();
    await moveTo(page, 30);
    await seconds(1.5);
    const walking = await shownOnLock(page);
    expect(walking.title.toUpperCase()).toContain('WALK');
    expect(walking.next.toUpperCase()).toContain('RUN');
    expect(walking.pictures).toBeGreaterThan(0);
    expect(walking.state).toBe('playing');
    // The session alone, without the lanes behind it.
    expect(walking.position?.duration).toBe(290);
    expect(walking.position?.position).toBeGreaterThan(29);
    expect(walking.position?.position).toBeLessThan(35);

    await pressLock(page, 'nexttrack');
    await seconds(1.5);
    expect((await heard(page)).at).toBeGreaterThanOrEqual(70);
    expect((await heard(page)).at).toBeLessThan(76);
    expect((await shownOnLock(page)).title.toUpperCase()).toContain('RUN');

    await pressLock(page, 'pause');
    await seconds(1.5);
    const held = await heard(page);
    expect(held.paused).toBe(false);
    expect(held.at).toBeGreaterThan(410);
    expect((await shownOnLock(page)).title).toBe(lockScreen.holding);
    expect((await shownOnLock(page)).position?.duration).toBe(290);

    await pressLock(page, 'play');
    await seconds(2);
    const on = await heard(page);
    expect(on.at).toBeLessThan(80);
    expect(on.hidden).toBe(true);
    await pressLock(page, 'previoustrack');
    await seconds(1);
    expect((await heard(page)).at).toBeLessThan(72);
    await page.bringToFront();
    await button(page, running.hold).waitFor();
  },
);
