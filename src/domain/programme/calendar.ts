/** Days of weeks. Apart from `dates.ts`, which the first page reads programmes with. */
import { dayOf } from './dates.ts';

const DAY_MS = 86_400_000;

/** Days since 1970-01-01. Dates carry no zone here: a day is the one that the person lived in. */
export type Day = number;

/** The Monday on or before a day: 1970-01-01 was a Thursday (ISO 8601 weekday 4). */
export const mondayOf = (day: Day): Day => day - ((((day + 3) % 7) + 7) % 7);

/** From 1, Monday, to 7, Sunday: ISO 8601. */
export const weekdayOf = (day: Day): number => day - mondayOf(day) + 1;

/**
 * The day at a place.
 *
 * @param utc UTC milliseconds, @param offsetMinutes minutes east of UTC at that moment
 */
export const dayAt = (utc: number, offsetMinutes: number): Day =>
  Math.floor((utc + offsetMinutes * 60_000) / DAY_MS);

/** The week that a day lies in when the first begins on a day, from 1; below 1 before that. */
export const weekAt = (start: Day, day: Day): number => Math.floor((day - start) / 7) + 1;

/** The week of a programme of some weeks that is nearest to a week. */
export const weekWithin = (week: number, weeks: number): number =>
  Math.min(Math.max(1, weeks), Math.max(1, week));

/** A day as an ISO 8601 calendar date. */
export const isoDate = (day: Day): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/**
 * Monday and Sunday of a programme's week.
 *
 * @param startDate the programme's first Monday; without one, or with none that exists, no week has dates
 * @param week from 1
 */
export function datesOfWeek(
  startDate: string | undefined,
  week: number,
): { readonly monday: string; readonly sunday: string } | undefined {
  const first = startDate === undefined ? undefined : dayOf(startDate);
  if (first === undefined) return undefined;
  const monday = first + 7 * (week - 1);
  return { monday: isoDate(monday), sunday: isoDate(monday + 6) };
}
