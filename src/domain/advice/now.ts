import type { RatingWay } from '../back/session.ts';
import type { Pause } from '../log/following.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import { bodyFindings } from './body.ts';
import { type Course, courseOf, type ReEntry } from './course.ts';
import { dayIn } from './days.ts';
import { type Action, type Finding, LEADS_TO } from './finding.ts';
import { type Missed, missedOf } from './missed.ts';
import {
  countOf,
  type NextSession,
  nextOf,
  placeOf,
  type Stage,
  type WeekCount,
} from './next-session.ts';
import { type Rest, restOn } from './rest.ts';
import type { Situation } from './situation.ts';
import { type WeekState, weekStates } from './week-states.ts';

/** Everything that the first screen of a programme says. */
export interface Now {
  readonly stage: Stage;
  /** The week of the programme that is theirs, from 1; its last one when it is through. */
  readonly week: number;
  readonly next?: NextSession;
  readonly count: WeekCount;
  /** Days to the event; below 0 when it is over. */
  readonly event?: { readonly date: string; readonly days: number };
  /** Until week 1, while it lies ahead. */
  readonly start?: { readonly date: string; readonly days: number };
  readonly rest?: Rest;
  /** A warning sign or a niggle that comes before any session: to be said first. */
  readonly care?: Finding;
  readonly missed?: Missed;
  readonly pause?: Pause;
  /** After days away: the week to come back in. `next` is in it; the person may take another. */
  readonly reEntry?: ReEntry;
  /** The leader's week, and weeks that would lie past the event when begun at week 1 now. */
  readonly late?: { readonly week: number; readonly over?: number };
  readonly weeks: readonly WeekState[];
}

/** Weeks of a programme begun at this Monday that would lie past the event. */
function weeksOver({ programme }: Situation, monday: Day): { over?: number } {
  const event = dayIn(programme.goal.date);
  if (event === undefined) return {};
  const last = monday + 7 * programme.weeks.length - 1;
  return { over: Math.max(0, Math.ceil((last - Math.max(event, monday - 1)) / 7)) };
}

/** Advice that comes before the next session. */
const HOLDS: readonly Action[] = ['stop', 'rest'];

/**
 * What a person should know when they open the app: what is next, and how the week, the programme
 * and the event stand. Nothing that was missed is asked for again, and nothing is a streak.
 */
export const nowOf = (situation: Situation, rating: RatingWay = 'at-the-end'): Now =>
  nowIn(situation, courseOf(situation), rating);

/** The same, where the course of the weeks is known. */
export function nowIn(situation: Situation, course: Course, rating: RatingWay): Now {
  const place = placeOf(situation, course);
  const { programme, entries, today } = situation;
  const count = countOf(situation, course, place.now);
  const rest = restOn({ entries, today }, rating);
  const event = dayIn(programme.goal.date);
  const care = bodyFindings(situation, course).find(({ code }) => HOLDS.includes(LEADS_TO[code]));
  const { pause, reEntry, late } = course;
  const paused = dayIn(pause?.to);
  const notBefore = Math.max(
    dayIn(rest?.until) ?? 0,
    dayIn(String(care?.detail.until)) ?? 0,
    paused === undefined ? 0 : paused + 1,
  );
  const next = nextOf(situation, course, place, count, notBefore);
  const isThrough = next === undefined;
  const stage = isThrough ? 'through' : place.stage;
  const missed =
    stage === 'under-way' && !course.reEntry
      ? missedOf(situation, course, count, notBefore)
      : undefined;
  return {
    stage,
    week: Math.min(place.now, programme.weeks.length),
    ...(next && { next }),
    count,
    ...(event !== undefined && {
      event: { date: isoDate(event), days: event - course.today },
    }),
    ...(place.from > course.today && {
      start: { date: isoDate(place.from), days: place.from - course.today },
    }),
    ...(rest && { rest }),
    ...(care && { care }),
    ...(missed && { missed }),
    ...(pause && { pause }),
    ...(reEntry && !pause && { reEntry }),
    ...(late && { late: { week: late.week, ...weeksOver(situation, course.monday) } }),
    weeks: weekStates(situation, course, place),
  };
}
