import type { LogEntry } from '../log/entry.ts';
import { localDate } from '../log/local-date.ts';
import { dayOf } from '../programme/dates.ts';

const DAY_MS = 86_400_000;

/** Days since 1970-01-01. Dates carry no zone here: a day is the one that the person lived in. */
export type Day = number;

/** The ISO 8601 calendar date of a day. */
export const dateOf = (day: Day): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** The Monday on or before a day: weeks are ISO 8601's. 1970-01-01 was a Thursday. */
export const mondayOf = (day: Day): Day => day - ((((day + 3) % 7) + 7) % 7);

/**
 * The day that a session belongs to: its own local date. Where that is no date, the day at its
 * start by its own offset, so that no session is lost.
 */
export const dayOfEntry = (entry: LogEntry): Day =>
  dayOf(entry.localDate) ?? (dayOf(localDate(entry.startedAt, entry.offsetMinutes)) as Day);
