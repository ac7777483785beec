/** What a page gives to the lock screen, and its buttons. */
import type { Page } from 'playwright-core';

interface Lock {
  readonly handlers: Record<string, (() => void) | null>;
  position: MediaPositionState | undefined;
}

type WithLock = Window & { lock: Lock };

/** Remembers what the page gives to the lock screen, which a headless browser does not draw. */
export const watchLockScreen = (page: Page): Promise<unknown> =>
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

/** Presses a button of the lock screen, such as `pause` or `nexttrack`. */
export const pressLock = (page: Page, key: string): Promise<void> =>
  page.evaluate((name) => (window as unknown as WithLock).lock.handlers[name]?.(), key);

/** What the lock screen says now. */
export const shownOnLock = (page: Page) =>
  page.evaluate(() => ({
    title: navigator.mediaSession.metadata?.title ?? '',
    next: navigator.mediaSession.metadata?.artist ?? '',
    pictures: navigator.mediaSession.metadata?.artwork.length ?? 0,
    state: navigator.mediaSession.playbackState,
    position: (window as unknown as WithLock).lock.position,
  }));
