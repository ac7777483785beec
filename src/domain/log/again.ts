import type { LogEntry } from './entry.ts';

/**
 * A rating after a pause: about 30 min after the end, so that the last part does not stand for
 * the whole (Foster 2001, J Strength Cond Res 15(1):109-15).
 */
export const AGAIN_AFTER_MS = 30 * 60_000;

/**
 * Ratings stayed the same for up to 14 days (Foster 2021, Int J Sports Physiol Perform
 * 16(5):612-21); older ones are not asked for.
 */
export const AGAIN_WITHIN_MS = 14 * 24 * 60 * 60_000;

/** When a session was over, as far as an entry tells: time on hold is not in it. */
const endOf = (entry: LogEntry): number => entry.startedAt + entry.activeSeconds * 1000;

/**
 * The session whose effort is to be asked again: the latest, half an hour or more after it ended
 * and was rated. One that was first rated after such a pause has its answer already.
 *
 * @param entries newest first, @param now UTC milliseconds
 * @param notThis id of an entry that the person does not want to be asked about
 */
export function askAgainOf(
  entries: readonly LogEntry[],
  now: number,
  notThis?: string,
): LogEntry | undefined {
  const [latest] = entries;
  if (latest === undefined || latest.id === notThis) return undefined;
  const { feeling, feltAt = 0 } = latest;
  if (feeling.effortLater !== undefined) return undefined;
  const end = endOf(latest);
  if (feeling.effort !== undefined && feltAt - end >= AGAIN_AFTER_MS) return undefined;
  const since = now - Math.max(end, feltAt);
  return since >= AGAIN_AFTER_MS && since <= AGAIN_WITHIN_MS ? latest : undefined;
}
