import { dayOf } from '../programme/dates.ts';
import { REVIEW_LIMITS } from './limits.ts';
import type { Outline } from './outline.ts';

const dayIn = (date: string | undefined): number | undefined =>
  date === undefined ? undefined : dayOf(date);

/**
 * The week (from 0) that leads up to the event: the one in which the day before it lies. Without
 * dates the event is taken to follow the last week, once there are weeks enough for a programme.
 *
 * @returns undefined when the event is later than the day after the last week, or before the
 * programme's second day: then no week leads up to it
 */
export function eventWeek({ weeks, goal, startDate }: Outline): number | undefined {
  const [event, start] = [dayIn(goal.date), dayIn(startDate)];
  if (event === undefined || start === undefined)
    return weeks.length < REVIEW_LIMITS.arrivalWeeks.value ? undefined : weeks.length - 1;
  const week = Math.floor((event - 1 - start) / 7);
  return week >= 0 && week < weeks.length ? week : undefined;
}
