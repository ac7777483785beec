/** Says across all tabs of this browser whether a session is under way in one of them. */
export interface SessionLock {
  /** Marks that a session runs here. Call what it returns when the session is over. */
  hold(): () => void;
  /** Does something only when no tab runs a session; none can begin before it is done. */
  whileNobodyRuns(job: () => Promise<void>): Promise<void>;
}

const NAME = 'towpath-session-under-way';

/**
 * A shared Web Lock per tab that runs a session. The browser drops it when a tab dies, so
 * nothing is left behind by a crash. Without Web Locks each tab knows of its own session only.
 */
export function createSessionLock(locks: LockManager | undefined): SessionLock {
  if (locks === undefined) {
    return { hold: () => () => {}, whileNobodyRuns: (job) => job() };
  }
  return {
    hold() {
      let done = (): void => {};
      const over = new Promise<void>((resolve) => {
        done = resolve;
      });
      void locks.request(NAME, { mode: 'shared' }, () => over);
      return done;
    },
    async whileNobodyRuns(job) {
      await locks.request(NAME, { ifAvailable: true }, async (lock) => {
        if (lock !== null) await job();
      });
    },
  };
}
