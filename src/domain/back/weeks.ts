import { groupedBy } from '../grouped-by.ts';
import type { LogEntry } from '../log/entry.ts';
import { type Day, mondayOf } from '../programme/calendar.ts';
import { type Ms, ms } from '../units.ts';
import { planReader } from './laid.ts';
import { type RatingWay, type SessionBack, type Sums, sessionBack } from './session.ts';
import { dayOfEntry } from './week.ts';

/** A week from Monday to Sunday, by the local dates of its sessions. */
export interface WeekBack extends Sums {
  readonly monday: Day;
  /** By their start. */
  readonly list: readonly SessionBack[];
  /** Longest running stretch of all sessions in which it is known. */
  readonly longestRun?: Ms;
}

const NONE: Sums = {
  walk: ms(0),
  run: ms(0),
  still: ms(0),
  extra: ms(0),
  moderate: ms(0),
  vigorous: ms(0),
  load: 0,
  sessions: 0,
  rated: 0,
};

const plus = (a: Sums, b: Sums): Sums => ({
  walk: ms(a.walk + b.walk),
  run: ms(a.run + b.run),
  still: ms(a.still + b.still),
  extra: ms(a.extra + b.extra),
  moderate: ms(a.moderate + b.moderate),
  vigorous: ms(a.vigorous + b.vigorous),
  load: a.load + b.load,
  sessions: a.sessions + b.sessions,
  rated: a.rated + b.rated,
});

/** Sessions or weeks added up; in any order it is the same. */
export const sumOf = (parts: readonly Sums[]): Sums => parts.reduce(plus, NONE);

function weekOf(monday: Day, list: readonly SessionBack[]): WeekBack {
  const runs = list.flatMap(({ longestRun }) => (longestRun === undefined ? [] : [longestRun]));
  const longest = runs.length === 0 ? undefined : ms(Math.max(...runs));
  return {
    ...sumOf(list),
    monday,
    list,
    ...(longest === undefined ? {} : { longestRun: longest }),
  };
}

const byStart = (a: LogEntry, b: LogEntry): number =>
  a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1);

/** The entries of a log by the Monday of their week, each week in the order of starts. */
export type LogByWeek = ReadonlyMap<Day, readonly LogEntry[]>;

/** Sorts a log into weeks, without reading a plan: a long log opens at the speed of a short one. */
export function byWeek(entries: readonly LogEntry[]): LogByWeek {
  const weeks = groupedBy(entries, (entry) => mondayOf(dayOfEntry(entry)));
  for (const list of weeks.values()) list.sort(byStart);
  return weeks;
}

/**
 * Weeks in a row, oldest first, up to the one that begins on `last`; a week without a session is
 * there as an empty one, because a gap is part of the picture. Only these weeks are read.
 */
export function weeksUpTo(
  log: LogByWeek,
  last: Day,
  count: number,
  way: RatingWay = 'at-the-end',
): readonly WeekBack[] {
  const read = planReader();
  return Array.from({ length: count }, (_, n) => last - 7 * (count - 1 - n)).map((monday) =>
    weekOf(
      monday,
      (log.get(monday) ?? []).map((entry) => sessionBack(entry, read(entry.plan), way)),
    ),
  );
}
