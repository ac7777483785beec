import { isoDate, mondayOf, weekdayOf } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';

/** A day by its week, as ISO 8601 counts: the year may differ from the calendar's at its ends. */
export interface IsoWeek {
  readonly year: number;
  /** 1 to 53. */
  readonly week: number;
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
}

const WEEK_DAYS = 7;
const digits = (value: number, count: number): string => String(value).padStart(count, '0');

/**
 * The week that a calendar date (ISO 8601) lies in. Week 1 is the one with the year's first
 * Thursday in it (ISO 8601-1:2019, 3.1.1.23).
 *
 * @returns nothing when there is no such day
 */
export function isoWeek(date: string): IsoWeek | undefined {
  const day = dayOf(date);
  if (day === undefined) return undefined;
  const monday = mondayOf(day);
  const year = Number(isoDate(monday + 3).slice(0, 4));
  const first = mondayOf(dayOf(`${digits(year, 4)}-01-04`) ?? Number.NaN);
  return { year, week: (monday - first) / WEEK_DAYS + 1, weekday: weekdayOf(day) };
}

/** `2027-W09`, which sorts as the weeks follow each other. */
export function isoWeekText(date: string): string {
  const found = isoWeek(date);
  return found === undefined ? '' : `${digits(found.year, 4)}-W${digits(found.week, 2)}`;
}
