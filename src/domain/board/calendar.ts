import { dayIn } from '../advice/days.ts';
import { type Day, weekAt, weekWithin } from '../programme/calendar.ts';
import type { BoardInput } from './board.ts';
import { quantile } from './spread.ts';

/** How the programme's weeks lie about today. */
export interface Calendar {
  readonly today: Day;
  /** Monday of week 1; nothing: weeks are known by what was done. */
  readonly start?: Day;
  /** The week that today lies in, within the programme, from 1. */
  readonly week: number;
}

/**
 * Without dates the week is the one that most have reached: the middle of the people's latest
 * weeks, or the latest that was led together.
 */
function weekReached({ heard, days }: BoardInput): number {
  const each = heard
    .filter(({ entries }) => entries.length > 0)
    .map(({ entries }) => entries.reduce((most, { week }) => Math.max(most, week), 1))
    .sort((a, b) => a - b);
  const most = each.length === 0 ? 1 : Math.floor(quantile(each, 0.5));
  return days.reduce((latest, { which }) => Math.max(latest, which.week), most);
}

/** The week is found by the start date; without one, by what was told and led together. */
export function calendarOf(input: BoardInput): Calendar {
  const { programme } = input;
  const weeks = programme.weeks.length;
  const [today = 0, start] = [dayIn(input.today), dayIn(programme.startDate)];
  if (start === undefined) return { today, week: weekWithin(weekReached(input), weeks) };
  return { today, start, week: weekWithin(weekAt(start, today), weeks) };
}

/** Monday of a week, from 1, where weeks have dates. */
export const mondayOfWeek = ({ start }: Calendar, week: number): Day | undefined =>
  start === undefined ? undefined : start + 7 * (week - 1);
