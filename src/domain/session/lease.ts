/** Which tab runs a session, and when it last gave a sign of life (UTC milliseconds). */
export interface Lease {
  readonly session: string;
  readonly tab: string;
  readonly beatAt: number;
}

/** A running tab gives a sign this often. */
export const BEAT_EVERY_MS = 5000;
/** Without a sign for this long, a tab is taken for dead. */
export const DEAD_AFTER_MS = 30_000;

/**
 * Whether a tab may run a session now. Another tab's lease stands while its sign of life is
 * young. That the browser knows its tab to be gone (its Web Lock is free) shortens the wait.
 * A sign from the future is a clock put back, and stands for no longer than a fresh one.
 *
 * @param knownGone the holder's Web Lock is free; false where that cannot be known
 */
export function mayTake(
  lease: Lease | undefined,
  tab: string,
  now: number,
  knownGone: boolean,
): boolean {
  if (lease === undefined || lease.tab === tab || knownGone) return true;
  return Math.abs(now - lease.beatAt) >= DEAD_AFTER_MS;
}
