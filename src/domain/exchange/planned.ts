import type { Pause } from '../log/following.ts';
import { dayOf } from '../programme/dates.ts';
import type { Programme, SessionPlan } from '../programme/programme.ts';
import { planTotals } from '../programme/totals.ts';
import { isoDate } from '../workshop/calendar.ts';

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

/** One plan stands for as many sessions as the week may have; several are one session each. */
function sessionsOf(plans: readonly SessionPlan[], most: number): readonly SessionPlan[] {
  const [only] = plans;
  return plans.length === 1 && only !== undefined
    ? Array.from({ length: Math.max(1, most) }, () => only)
    : plans;
}

const isIn = (date: string, { from, to }: Pause): boolean =>
  from <= date && (to === undefined || date <= to);

/**
 * The sessions of a group on chosen days, in order: the first chosen day of a week is its session
 * 1. Never more a week than its leader wrote, none on the day of the event or after it, none
 * before `from` and none in a pause. A session that a pause takes is left out; the others keep
 * their number and their day.
 */
export function plannedSessions(wish: PlanWish): readonly Planned[] {
  const { programme, group, anchor, from, pauses } = wish;
  const monday = dayOf(anchor.monday);
  if (monday === undefined) return [];
  const days = [...new Set(wish.days)]
    .filter((day) => Number.isInteger(day) && day >= 1 && day <= 7)
    .sort((a, b) => a - b);
  const event = programme.goal.date;
  return programme.weeks.slice(anchor.week - 1).flatMap(({ sessions, timesPerWeek }, n) =>
    sessionsOf(sessions[group] ?? [], timesPerWeek.max)
      .slice(0, days.length)
      .map(({ text, plan }, i): Planned => {
        const date = isoDate(monday + 7 * n + (days[i] ?? 1) - 1);
        const { seconds } = planTotals(plan);
        return { date, week: anchor.week + n, session: i + 1, text, seconds };
      })
      .filter(({ date }) => date >= from && (event === undefined || date < event))
      .filter(({ date }) => !pauses.some((pause) => isIn(date, pause))),
  );
}
