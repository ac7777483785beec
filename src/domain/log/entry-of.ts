import { activeMs, coveredOf, doneMs, type Interval } from '../session/credit.ts';
import type { Session } from '../session/session.ts';
import type { LogEntry } from './entry.ts';

/** Whole seconds: an entry is read by people. */
const seconds = (milliseconds: number): number => Math.round(milliseconds / 1000);

/**
 * The log entry of a session that is over. It says what was gone through, never what was planned.
 * The session's id is the entry's: written twice, it is still one entry.
 */
export function entryOf(session: Session): LogEntry {
  const { about, credit } = session;
  return {
    format: 'towpath-log/2',
    id: about.id,
    programme: about.programme,
    group: about.group,
    week: about.week,
    session: about.session,
    plan: about.plan,
    target: about.target,
    startedAt: about.startedAt,
    offsetMinutes: about.offsetMinutes,
    zone: about.zone,
    localDate: about.localDate,
    outcome: session.name === 'finished' ? 'finished' : 'ended-early',
    doneSeconds: seconds(doneMs(credit)),
    activeSeconds: seconds(activeMs(credit)),
    covered: inSeconds(coveredOf(credit)),
    feeling: {},
    how: 'app',
  };
}

function inSeconds(intervals: readonly Interval[]): (readonly [number, number])[] {
  const merged: [number, number][] = [];
  for (const [from, to] of intervals.map(([a, b]) => [seconds(a), seconds(b)] as const)) {
    const last = merged.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else if (to > from) merged.push([from, to]);
  }
  return merged;
}
