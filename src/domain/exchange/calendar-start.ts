import { weekAt } from '../advice/bases.ts';
import { courseOf } from '../advice/course.ts';
import type { Situation } from '../advice/situation.ts';
import { isoDate } from '../programme/calendar.ts';
import type { PlanWish } from './planned.ts';

/** Where planning begins: the week that is theirs now, and what they have done of it. */
export type CalendarStart = Pick<PlanWish, 'anchor' | 'done'>;

/**
 * How the weeks of a programme go on for somebody from today, by the same rules as advice and
 * "now" go by. Before the first week begins, from its Monday on; a programme without dates begins
 * in the week of today.
 */
export function calendarStart(situation: Situation): CalendarStart {
  const { bases, monday, done } = courseOf(situation);
  const week = weekAt(bases, monday);
  const [first] = bases;
  if (week === undefined && first !== undefined)
    return { anchor: { monday: isoDate(first.monday), week: first.week }, done: new Set() };
  const from = bases.at(-1)?.from ?? monday;
  const keys = done
    .filter(({ day }) => day >= from)
    .map(({ entry }) => `${entry.week}.${entry.session}`);
  return { anchor: { monday: isoDate(monday), week: week ?? 1 }, done: new Set(keys) };
}
