import { dayOf } from '../programme/dates.ts';
import type { Outline } from './outline.ts';

/**
 * The week (from 0) that leads up to the event: the one in which the day before it lies. Without
 * dates the event is taken to follow the last week.
 *
 * @returns undefined when the event is later than the day after the last week, or before the
 * programme's second day: then no week leads up to it
 */
export function eventWeek({ weeks, goal, startDate }: Outline): number | undefined {
  if (weeks.length === 0) return undefined;
  if (goal.date === undefined || startDate === undefined) return weeks.length - 1;
  const [event, start] = [dayOf(goal.date), dayOf(startDate)];
  if (event === undefined || start === undefined) return weeks.length - 1;
  const week = Math.floor((event - 1 - start) / 7);
  return week >= 0 && week < weeks.length ? week : undefined;
}
