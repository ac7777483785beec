import type { Pause } from '../log/following.ts';
import type { Day } from '../programme/calendar.ts';
import { dayIn } from './days.ts';
import { rule } from './rules.ts';

/** Whole days between two days with something on them. */
export const idleBetween = (from: Day, to: Day): number => Math.max(0, to - from - 1);

/** Days of a pause up to a day, both ends included. */
export const pausedDays = ({ from, to }: Pause, after: Day, until: Day): number => {
  const [first, last] = [dayIn(from), to === undefined ? until : dayIn(to)];
  if (first === undefined || last === undefined) return 0;
  return Math.max(0, Math.min(last, until) - Math.max(first, after + 1) + 1);
};

/** Whether so much illness lies after a day, up to another, that it is more than a few missed days. */
export const wasIll = (pauses: readonly Pause[], after: Day, until: Day): boolean =>
  pauses
    .filter(({ why }) => why === 'illness')
    .reduce((sum, pause) => sum + pausedDays(pause, after, until), 0) >= rule('illness');

/** Whether the days between two were long enough, or ill enough, to come back in gently. */
export const wasAway = (pauses: readonly Pause[], from: Day, to: Day): boolean =>
  idleBetween(from, to) > rule('away') || wasIll(pauses, from, to);

/** How many days of the week of a Monday were a pause. */
export const pausedIn = (pauses: readonly Pause[], monday: Day, until: Day): number =>
  pauses.reduce(
    (sum, pause) => sum + pausedDays(pause, monday - 1, Math.min(monday + 6, until)),
    0,
  );
