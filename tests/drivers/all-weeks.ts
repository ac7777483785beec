import { byWeek, type WeekBack, weeksUpTo } from '../../src/domain/back/weeks.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';

/** Every week of a log in which there was a session, oldest first, each as the app reads it. */
export function weeksBack(entries: readonly LogEntry[]): readonly WeekBack[] {
  const log = byWeek(entries);
  return [...log.keys()].sort((a, b) => a - b).flatMap((monday) => weeksUpTo(log, monday, 1));
}
