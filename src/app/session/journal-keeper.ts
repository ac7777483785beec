import { BEAT_EVERY_MS, mayTake } from '../../domain/session/lease.ts';
import type { Clock, Presence, Store } from '../ports.ts';

/** Sees to it that one tab at a time runs a session. */
export interface JournalKeeper {
  /** The tab's own id, under which it writes. */
  readonly tab: string;
  /** Takes a session for this tab. False when another tab that lives has one. */
  take(session: string): Promise<boolean>;
  /** Another tab that lives runs a session (that one, or any). */
  isElsewhere(session?: string): Promise<boolean>;
  /** That session no longer runs here; another that was taken since stays. */
  release(session: string): void;
}

/**
 * @param lost another tab took the session while this one gave no sign of life
 */
export function createJournalKeeper(
  { clock, store, presence }: { clock: Clock; store: Store; presence: Presence },
  tab: string,
  lost: () => void,
): JournalKeeper {
  let kept: { readonly session: string; readonly stop: () => void } | undefined;

  const lease = (session: string) => ({ session, tab, beatAt: clock.now() });

  function release(session: string): void {
    if (kept?.session !== session) return;
    kept.stop();
    kept = undefined;
    presence.release();
  }

  async function beat(session: string): Promise<void> {
    const result = await store.beat(lease(session));
    if (!result.ok || result.value || kept?.session !== session) return;
    release(session);
    lost();
  }

  return {
    tab,
    async take(session) {
      const knownGone = await presence.isFree();
      const taken = await store.takeLease(lease(session), knownGone);
      // Storage that cannot be written refuses nobody: the session goes on from memory.
      if (taken.ok && !taken.value) return false;
      kept?.stop();
      presence.hold();
      kept = { session, stop: clock.every(BEAT_EVERY_MS, () => void beat(session)) };
      return true;
    },
    async isElsewhere(session) {
      const found = await store.lease();
      if (!found.ok || found.value === undefined) return false;
      if (session !== undefined && found.value.session !== session) return false;
      return !mayTake(found.value, tab, clock.now(), await presence.isFree());
    },
    release,
  };
}
