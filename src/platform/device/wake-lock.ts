/** Keeps the screen on for as long as it is wanted. */
export interface WakeLock {
  readonly possible: boolean;
  want(on: boolean): void;
  /** Tells whether the screen is really kept on. */
  onChange(listener: (awake: boolean) => void): void;
}

/**
 * The browser lets go of the lock whenever the page is hidden: it is asked for again each time
 * the page is seen. A refusal (battery saving, an older home-screen app) is told, never thrown.
 */
export function createWakeLock(): WakeLock {
  const { wakeLock } = navigator as { wakeLock?: Navigator['wakeLock'] };
  let wanted = false;
  let held: WakeLockSentinel | undefined;
  let asking = false;
  let tell = (_awake: boolean): void => {};

  async function ask(): Promise<void> {
    if (!wanted || held !== undefined || asking || document.visibilityState !== 'visible') return;
    asking = true;
    try {
      const lock = await wakeLock?.request('screen');
      if (lock !== undefined) keep(lock);
    } catch {
      tell(false);
    } finally {
      asking = false;
    }
  }

  function keep(lock: WakeLockSentinel): void {
    if (!wanted) {
      void lock.release();
      return;
    }
    held = lock;
    lock.addEventListener('release', () => {
      held = undefined;
      tell(false);
    });
    tell(true);
  }

  document.addEventListener('visibilitychange', () => void ask());
  return {
    possible: wakeLock !== undefined,
    want(on) {
      wanted = on;
      if (on) void ask();
      else void held?.release();
    },
    onChange(listener) {
      tell = listener;
    },
  };
}
