import type { Presence } from '../../app/ports.ts';

const NAME = 'towpath-session-runs';

/**
 * A Web Lock held by the tab that runs a session. The browser frees it when the tab dies, so a
 * killed session can be gone on with at once. The rule itself stands on the lease's sign of life.
 */
export function createPresence(locks: LockManager | undefined): Presence {
  let letGo: (() => void) | undefined;
  return {
    hold() {
      if (locks === undefined || letGo !== undefined) return;
      const over = new Promise<void>((resolve) => {
        letGo = resolve;
      });
      // A frozen tab whose lease ran out still has the lock: it is taken from it.
      locks.request(NAME, { steal: true }, () => over).catch(() => {});
    },
    release() {
      letGo?.();
      letGo = undefined;
    },
    async isFree() {
      if (locks === undefined) return false;
      const known = await locks.query().catch(() => undefined);
      return known !== undefined && !known.held?.some(({ name }) => name === NAME);
    },
  };
}
