import { type Day, isoDate, mondayOf } from '../programme/calendar.ts';
import { pausedIn } from './away.ts';
import { weekAt } from './bases.ts';
import type { Course } from './course.ts';
import { rule } from './rules.ts';
import { enoughOf, type Situation, sessionsFor } from './situation.ts';

/** How a week of a programme stands for a person. */
export type WeekName =
  | 'done'
  /** Something of it was done, less than the fewest times. */
  | 'part'
  | 'missed'
  /** Mostly a pause. */
  | 'paused'
  /** It lay before the person began, or they went past it. */
  | 'passed'
  | 'now'
  | 'coming';

/** A week of the programme on this person's calendar. */
export interface WeekState {
  /** From 1. */
  readonly week: number;
  readonly name: WeekName;
  /** Its Monday and Sunday, ISO 8601, where it lies or lay on a date. */
  readonly dates?: { readonly from: string; readonly to: string };
  /** Sessions of it that were done, out of order and repeats included. */
  readonly times: number;
  /** Whether each of its sessions was done, in order. */
  readonly sessions: readonly boolean[];
}

/** The last Monday before this one on which each week of the programme was the person's. */
function pastMondays({ bases, monday }: Course): ReadonlyMap<number, Day> {
  const mondays = new Map<number, Day>();
  const first = bases[0]?.monday ?? monday;
  for (let at = first; at < monday; at += 7) {
    const week = weekAt(bases, at);
    if (week !== undefined) mondays.set(week, at);
  }
  return mondays;
}

/** What became of each week, and what is to come, when `now` (from 1) is this week's. */
export function weekStates(
  situation: Situation,
  course: Course,
  { now, from }: { readonly now: number; readonly from: Day },
): readonly WeekState[] {
  const { programme, group, following } = situation;
  const past = pastMondays(course);
  const firstDay = course.done[0]?.day;
  const { upcoming } = course;
  /** Of this week and those to come; from the week of a decision to come on, by that. */
  const mondayAt = (number: number): Day =>
    upcoming !== undefined && number > now && number >= upcoming.week
      ? mondayOf(upcoming.day) + 7 * (number - upcoming.week)
      : from + 7 * (number - now);
  return programme.weeks.map((week, n): WeekState => {
    const number = n + 1;
    const at = number < now ? past.get(number) : mondayAt(number);
    const of = course.done.filter(({ entry }) => entry.week === number);
    const isPaused =
      at !== undefined && pausedIn(following?.pauses ?? [], at, course.today) >= rule('mostly');
    const hadBegun = at !== undefined && firstDay !== undefined && at + 6 >= firstDay;
    const isOver = number < now || (number === now && course.monday > from + 6);
    const name = ((): WeekName => {
      if (of.length >= enoughOf(week, group) && (isOver || number > now)) return 'done';
      if (!isOver) return number === now && course.monday >= from ? 'now' : 'coming';
      if (of.length > 0) return 'part';
      if (isPaused) return 'paused';
      return hadBegun ? 'missed' : 'passed';
    })();
    return {
      week: number,
      name,
      ...(at !== undefined && { dates: { from: isoDate(at), to: isoDate(at + 6) } }),
      times: of.length,
      sessions: sessionsFor(week, group).map((_, s) =>
        of.some(({ entry }) => entry.session === s + 1),
      ),
    };
  });
}
