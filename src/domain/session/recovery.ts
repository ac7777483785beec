import { ms } from '../units.ts';
import { laneLimit } from './move.ts';
import { isOver, isWaiting, type Session } from './session.ts';
import { LONGEST_WAIT } from './wait.ts';

const MINUTE = 60_000;
/** Up to this age a session that was cut off is first offered to be gone on with. */
export const GO_ON_FOR_MS = 30 * MINUTE;
/** Up to this age it is kept as it is, unless the person goes on all the same. */
export const KEEP_FOR_MS = 6 * 60 * MINUTE;
/** Cut off this near to its end, a session whose end the wall clock has passed was finished. */
export const LAST_STRETCH = ms(10_000);

/** What to do with a session that the journal holds and nobody runs. */
export type Recovery =
  | 'go-on'
  | 'keep'
  | 'wait'
  | 'save-finished'
  | 'save-ended-early'
  | 'close'
  | 'forget';

/**
 * @param session the journal read back
 * @param now UTC milliseconds
 * @returns `close` for a session that was over and only had not been logged yet, `forget` for one
 * that never began and is not waited for any more
 */
export function recoveryOf(session: Session, now: number): Recovery {
  if (session.name === 'left') return 'forget';
  if (isWaiting(session)) {
    const late = now - session.about.startedAt;
    return late >= -LONGEST_WAIT && late <= GO_ON_FOR_MS ? 'wait' : 'forget';
  }
  if (isOver(session)) return 'close';
  const left = laneLimit(session) - session.track;
  const lastLane = session.lane !== 'one-more';
  const endPassed = now - session.seenAt >= left;
  if (session.name === 'running' && lastLane && left <= LAST_STRETCH && endPassed) {
    return 'save-finished';
  }
  const age = now - session.seenAt;
  if (age <= GO_ON_FOR_MS) return 'go-on';
  return age <= KEEP_FOR_MS ? 'keep' : 'save-ended-early';
}

/** A session that was cut off, as it is to be logged: it ended when it was last seen. */
export function closed(session: Session, outcome: 'finished' | 'ended-early'): Session {
  return isOver(session)
    ? session
    : { ...session, name: outcome, endedAt: session.seenAt, hushed: true };
}
