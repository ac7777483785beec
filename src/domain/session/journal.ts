import type { SessionEvent } from './event.ts';
import { readySession, reduce } from './reduce.ts';
import type { Session } from './session.ts';

/**
 * The state that a journal's events lead to. Any first part of a journal is a journal.
 *
 * @returns nothing when it does not begin with a start: then there is no session to go on with
 */
export function replay(events: Iterable<SessionEvent>): Session | undefined {
  let session: Session | undefined;
  for (const event of events) {
    if (session === undefined && event.type !== 'start') return undefined;
    if (event.type === 'start' && session === undefined) {
      session = readySession(event.about, event.score, event.medium);
    }
    if (session === undefined) continue;
    const { state } = reduce(session, event);
    // What is read back has been written, whether or not it would be worth it again.
    session = { ...state, writtenAt: event.wall, writtenMove: state.moved };
  }
  return session;
}
