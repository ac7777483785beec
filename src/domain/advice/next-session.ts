import { type Day, isoDate } from '../programme/calendar.ts';
import type { SessionPlan } from '../programme/programme.ts';
import { planLength } from '../programme/totals.ts';
import type { Ms, Percent } from '../units.ts';
import { weekAt } from './bases.ts';
import type { Course } from './course.ts';
import { type Situation, sessionsFor } from './situation.ts';

/** Where a person is in a programme. */
export type Stage =
  /** The first week lies ahead. */
  | 'before'
  /** Nothing was done yet, and the leader's calendar is past the first week. */
  | 'late'
  | 'under-way'
  | 'paused'
  /** Every week lies behind. */
  | 'through';

/** The session that comes next, and whether the week asks for it. */
export interface NextSession {
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  readonly plan: SessionPlan;
  readonly length: Ms;
  /** Target for the whole session. */
  readonly target: Percent;
  /** The leader's words for the week. */
  readonly focus: string;
  /** It is the one that is done as a group. */
  readonly together: boolean;
  /** `due`: the week asks for it. `extra`: it may have one more. `later`: not before `from`. */
  readonly need: 'due' | 'extra' | 'later';
  /** The day from which it is meant, ISO 8601: today or a day to come. */
  readonly from: string;
}

/** Sessions done this week, against what the week asks for. */
export interface WeekCount {
  readonly done: number;
  readonly min: number;
  readonly max: number;
  readonly is: 'none' | 'some' | 'enough' | 'full';
}

/** The week that is theirs now, from 1, and the stage they are in. */
export interface Place {
  readonly now: number;
  /** Monday of that week for this person. */
  readonly from: Day;
  readonly stage: Stage;
}

/** Which week is theirs, by what they did and decided and by the leader's calendar. */
export function placeOf({ programme }: Situation, course: Course): Place {
  const { monday, bases, start, pause, late } = course;
  const here = weekAt(bases, monday);
  if (here === undefined && start !== undefined)
    return { now: 1, from: start, stage: pause ? 'paused' : 'before' };
  const now = here ?? 1;
  if (now > programme.weeks.length) return { now, from: monday, stage: 'through' };
  const stage = pause ? 'paused' : late ? 'late' : 'under-way';
  return { now, from: monday, stage };
}

/** Counts what was done since Monday against the times of a week, from 1. */
export function countOf({ programme }: Situation, course: Course, now: number): WeekCount {
  const week = programme.weeks[Math.min(now, programme.weeks.length) - 1];
  const done = course.done.filter(({ day }) => day >= course.monday).length;
  const [min, max] = [week?.timesPerWeek.min ?? 1, week?.timesPerWeek.max ?? 1];
  const is = done >= max ? 'full' : done >= min ? 'enough' : done > 0 ? 'some' : 'none';
  return { done, min, max, is };
}

/** The first session of a week that was not done this time through, by number from 1. */
function openSession({ programme, group }: Situation, course: Course, week: number) {
  const base = course.bases.findLast(({ monday }) => monday <= course.monday);
  const from = base?.from ?? Number.NEGATIVE_INFINITY;
  const done = new Set(
    course.done
      .filter(({ day, entry }) => entry.week === week && day >= from)
      .map(({ entry }) => entry.session),
  );
  const sessions = sessionsFor(programme.weeks[week - 1], group);
  const at = sessions.findIndex((_, n) => !done.has(n + 1));
  const plan = sessions[at];
  return plan === undefined ? undefined : { session: at + 1, plan };
}

/** The session of a week (from 1) that is next in it, with all that is shown of it. */
function sessionIn(
  { programme }: Situation,
  week: number,
  open: { readonly session: number; readonly plan: SessionPlan },
): Omit<NextSession, 'need' | 'from'> | undefined {
  const written = programme.weeks[week - 1];
  if (written === undefined) return undefined;
  return {
    week,
    ...open,
    length: planLength(open.plan.plan),
    target: written.effort,
    focus: written.focus,
    together: written.together === open.session,
  };
}

/** What was decided for a day to come, when that is the next session. */
function decidedNext(situation: Situation, { upcoming }: Course): NextSession | undefined {
  if (upcoming === undefined) return undefined;
  const { week, group, on } = upcoming;
  const plan = sessionsFor(situation.programme.weeks[week - 1], group)[0];
  const next = plan && sessionIn(situation, week, { session: 1, plan });
  return next && { ...next, need: 'later', from: on };
}

/**
 * The first session of this week that was not done yet; when the week has all it may have, that of
 * the next one, or of what was decided for it. Sessions left out in weeks before are not asked for.
 *
 * @param notBefore the first day that rest, a niggle or a pause leaves for it
 */
export function nextOf(
  situation: Situation,
  course: Course,
  { now, from }: Place,
  count: WeekCount,
  notBefore: Day,
): NextSession | undefined {
  const { weeks } = situation.programme;
  for (let number = now; number <= weeks.length; number += 1) {
    if (number > now && course.upcoming) return decidedNext(situation, course);
    const open = openSession(situation, course, number);
    if (open === undefined || (number === now && count.is === 'full')) continue;
    const next = sessionIn(situation, number, open);
    const isLater = number > now || from > course.today || course.pause !== undefined;
    const need = isLater ? 'later' : count.is === 'enough' ? 'extra' : 'due';
    const day = isoDate(Math.max(from + 7 * (number - now), course.today, notBefore));
    return next && { ...next, need, from: day };
  }
  return course.upcoming && decidedNext(situation, course);
}
