import { type Day, weekdayOf } from '../programme/calendar.ts';
import { pausedIn } from './away.ts';
import { weekAt } from './bases.ts';
import type { Course } from './course.ts';
import type { WeekCount } from './next-session.ts';
import { rule } from './rules.ts';
import { enoughOf, type Situation } from './situation.ts';

/** Days that went by without a session. Nothing has to be made up for. */
export interface Missed {
  /** The week before had fewer than its fewest times; or this one can no longer have them. */
  readonly what: 'last-week' | 'this-week';
  readonly done: number;
  readonly min: number;
  /** Sessions that still fit into this week with a day between, no more than it may have. */
  readonly fits: number;
}

/** Sessions that fit from a day to the Sunday of its week with a day between them. */
const fitsFrom = (day: Day, sunday: Day): number =>
  day > sunday ? 0 : Math.floor((sunday - day) / 2) + 1;

/** What went by, and how many sessions still fit. Nothing when nothing is to be said. */
export function missedOf(
  situation: Situation,
  course: Course,
  count: WeekCount,
  notBefore: Day,
): Missed | undefined {
  const { monday, today, done, bases } = course;
  const days = fitsFrom(Math.max(today, notBefore), monday + 6);
  const fits = Math.min(days, Math.max(0, count.max - count.done));
  const thin = thinWeek(situation, course);
  if (thin !== undefined && count.done === 0)
    return { what: 'last-week', done: thin.done, min: thin.min, fits };
  const hasBegun = bases.some((base) => base.monday <= monday) && done.length > 0;
  // Somebody who began or came back late in the week is not asked where the rest of it is.
  const since = Math.max(monday, done[0]?.day ?? monday, bases.at(-1)?.from ?? monday);
  if (!hasBegun || weekdayOf(since) >= rule('lateDay')) return undefined;
  const { done: times, min } = count;
  return times + fits < min ? { what: 'this-week', done: times, min, fits } : undefined;
}

/**
 * The calendar week before this one, when it was the person's, no pause, and had fewer than its
 * fewest sessions. A first week begun on Thursday or later is left alone.
 */
export function thinWeek(
  { programme, group, following }: Situation,
  { bases, monday, done, today }: Course,
): { readonly done: number; readonly min: number; readonly week: number } | undefined {
  const before = monday - 7;
  const number = weekAt(bases, before);
  const week = number === undefined ? undefined : programme.weeks[number - 1];
  const first = done[0]?.day;
  if (number === undefined || week === undefined || first === undefined) return undefined;
  if (first >= before + rule('lateDay') - 1) return undefined;
  if (pausedIn(following?.pauses ?? [], before, today) >= rule('mostly')) return undefined;
  const times = done.filter(({ day }) => day >= before && day < monday).length;
  const min = enoughOf(week, group);
  return times < min ? { done: times, min, week: number } : undefined;
}
