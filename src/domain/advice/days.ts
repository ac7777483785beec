import { isoDate, mondayOf } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';

/** A day, counted from 1970-01-01. */
export type Day = number;

/** The day of an ISO 8601 date; nothing that is no date lies anywhere. */
export const dayIn = (date: string | undefined): Day | undefined =>
  date === undefined ? undefined : dayOf(date);

/** From 1, Monday, to 7, Sunday: ISO 8601. */
export const weekdayOf = (day: Day): number => day - mondayOf(day) + 1;

export { isoDate, mondayOf };
