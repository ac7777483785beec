import type { LogEntry } from '../../domain/log/entry.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { sessionsOf } from './plans.ts';

/** Names a session within a group, for looking it up in a set. Both from 1. */
export const sessionKey = (week: number, session: number): string => `${week}.${session}`;

/** Sessions of a group that were gone through to the end, as `week.session`. */
export function finishedSessions(
  entries: readonly LogEntry[],
  programmeId: string,
  groupId: string,
): ReadonlySet<string> {
  return new Set(
    entries
      .filter(
        (entry) =>
          entry.programme.id === programmeId &&
          entry.group.id === groupId &&
          entry.outcome === 'finished',
      )
      .map((entry) => sessionKey(entry.week, entry.session)),
  );
}

/**
 * The first session that was not gone through and comes after the last one that was: a session
 * that was left out is not asked for again. Nothing when the programme is through.
 */
export function nextSession(
  programme: Programme,
  groupId: string,
  finished: ReadonlySet<string>,
): { readonly week: number; readonly session: number } | undefined {
  const all = programme.weeks.flatMap((_, i) =>
    sessionsOf(programme, groupId, i + 1).map((__, j) => ({ week: i + 1, session: j + 1 })),
  );
  const last = all.findLastIndex(({ week, session }) => finished.has(sessionKey(week, session)));
  return all[last + 1];
}
