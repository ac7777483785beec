import { sessionsFor } from '../advice/situation.ts';
import type { Pause } from '../log/following.ts';
import { isoDate } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';
import type { Programme } from '../programme/programme.ts';
import { planTotals } from '../programme/totals.ts';

/** On which days somebody wants to go out. */
export interface PlanWish {
  readonly programme: Programme;
  readonly group: string;
  /** On this Monday (ISO 8601) this week of the programme begins, counted from 1. */
  readonly anchor: { readonly monday: string; readonly week: number };
  /** ISO 8601 weekdays, 1 Monday to 7 Sunday, in any order. */
  readonly days: readonly number[];
  /** Nothing is planned before this day. */
  readonly from: string;
  /** Nothing is planned in these. */
  readonly pauses: readonly Pause[];
  /** As `week.session`, both from 1: these are not planned again. */
  readonly done: ReadonlySet<string>;
}

/** A session on a day. Week and session count from 1. */
export interface Planned {
  readonly date: string;
  readonly week: number;
  readonly session: number;
  /** The session in shorthand, as the leader wrote it. */
  readonly text: string;
  readonly seconds: number;
}

const isIn = (date: string, { from, to }: Pause): boolean =>
  from <= date && (to === undefined || date <= to);

/**
 * The sessions of a group on chosen days: in each week those that are still to be done, in the
 * leader's order, on the chosen days that are left. Never more a week than its leader wrote, none
 * on the day of the event or after it, none before `from` and none in a pause.
 */
export function plannedSessions(wish: PlanWish): readonly Planned[] {
  const { programme, group, anchor, from, pauses, done } = wish;
  const monday = dayOf(anchor.monday);
  if (monday === undefined) return [];
  const days = [...new Set(wish.days)]
    .filter((day) => Number.isInteger(day) && day >= 1 && day <= 7)
    .sort((a, b) => a - b);
  const event = programme.goal.date;
  const isFree = (date: string): boolean =>
    date >= from &&
    (event === undefined || date < event) &&
    !pauses.some((pause) => isIn(date, pause));
  return programme.weeks.slice(anchor.week - 1).flatMap((written, n) => {
    const week = anchor.week + n;
    const dates = days.map((day) => isoDate(monday + 7 * n + day - 1)).filter(isFree);
    return sessionsFor(written, group)
      .slice(0, days.length)
      .map((plan, i) => ({ plan, session: i + 1 }))
      .filter(({ session }) => !done.has(`${week}.${session}`))
      .slice(0, dates.length)
      .map(({ plan: { text, plan }, session }, i): Planned => {
        const { seconds } = planTotals(plan);
        return { date: dates[i] ?? '', week, session, text, seconds };
      });
  });
}
