import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { lockScreen } from '../../src/copy/lock-screen.ts';
import { running } from '../../src/copy/running.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { button, heard, moveTo, SEVERAL, startOn } from '../drivers/browser/visit.ts';

interface Lock {
  readonly handlers: Record<string, (() => void) | null>;
  position: MediaPositionState | undefined;
}

type WithLock = Window & { lock: Lock };

/** Remembers what the page gives to the lock screen, which a headless browser does not draw. */
const watchLockScreen = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const lock: Lock = { handlers: {}, position: undefined };
    (window as unknown as WithLock).lock = lock;
    const session = navigator.mediaSession;
    const set = session.setActionHandler.bind(session);
    session.setActionHandler = (action, handler) => {
      lock.handlers[action] = handler as (() => void) | null;
      set(action, handler);
    };
    const place = session.setPositionState.bind(session);
    session.setPositionState = (state) => {
      lock.position = state;
      place(state);
    };
  });

const press = (page: Page, key: string): Promise<void> =>
  page.evaluate((name) => (window as unknown as WithLock).lock.handlers[name]?.(), key);

const shown = (page: Page) =>
  page.evaluate(() => ({
    title: navigator.mediaSession.metadata?.title ?? '',
    next: navigator.mediaSession.metadata?.artist ?? '',
    pictures: navigator.mediaSession.metadata?.artwork.length ?? 0,
    state: navigator.mediaSession.playbackState,
    position: (window as unknown as WithLock).lock.position,
  }));

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
    const walking = await shown(page);
    expect(walking.title.toUpperCase()).toContain('WALK');
    expect(walking.next.toUpperCase()).toContain('RUN');
    expect(walking.pictures).toBeGreaterThan(0);
    expect(walking.state).toBe('playing');
    // The session alone, without the lanes behind it.
    expect(walking.position?.duration).toBe(290);
    expect(walking.position?.position).toBeGreaterThan(29);
    expect(walking.position?.position).toBeLessThan(35);

    await press(page, 'nexttrack');
    await seconds(1.5);
    expect((await heard(page)).at).toBeGreaterThanOrEqual(70);
    expect((await heard(page)).at).toBeLessThan(76);
    expect((await shown(page)).title.toUpperCase()).toContain('RUN');

    await press(page, 'pause');
    await seconds(1.5);
    const held = await heard(page);
    expect(held.paused).toBe(false);
    expect(held.at).toBeGreaterThan(410);
    expect((await shown(page)).title).toBe(lockScreen.holding);
    expect((await shown(page)).position?.duration).toBe(290);

    await press(page, 'play');
    await seconds(2);
    const on = await heard(page);
    expect(on.at).toBeLessThan(80);
    expect(on.hidden).toBe(true);
    await press(page, 'previoustrack');
    await seconds(1);
    expect((await heard(page)).at).toBeLessThan(72);
    await page.bringToFront();
    await button(page, running.hold).waitFor();
  },
);
