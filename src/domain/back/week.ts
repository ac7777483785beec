import type { LogEntry } from '../log/entry.ts';
import { localDate } from '../log/local-date.ts';
import type { Day } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';

/**
 * The day that a session belongs to: its own local date. Where that is no date, the day at its
 * start by its own offset, so that no session is lost.
 */
export const dayOfEntry = (entry: LogEntry): Day =>
  dayOf(entry.localDate) ?? (dayOf(localDate(entry.startedAt, entry.offsetMinutes)) as Day);
