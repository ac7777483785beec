/** Which day and which session an attendance list is of. */
import type { Attendance } from '../../domain/board/attendance.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { calendarOf } from '../../domain/board/calendar.ts';
import type { Programme } from '../../domain/programme/programme.ts';

/** Both from 1. */
export interface Which {
  readonly week: number;
  readonly session: number;
}

/** How many different or repeated sessions a week has: as many as people may do. */
export const sessionsIn = (programme: Programme, week: number): number => {
  const found = programme.weeks[week - 1];
  if (found === undefined) return 1;
  const written = Object.values(found.sessions).map((list) => list.length);
  return Math.max(1, found.timesPerWeek.max, ...written);
};

/** The session that is done together in a week, or its first. */
export const togetherIn = (programme: Programme, week: number): number =>
  programme.weeks[week - 1]?.together ?? 1;

/** What was said of a day; else the session together of the week that the day lies in. */
export function whichOn(input: BoardInput, date: string, day: Attendance | undefined): Which {
  if (day !== undefined) return { week: day.which.week, session: day.which.session };
  const { week } = calendarOf({ ...input, today: date });
  return { week, session: togetherIn(input.programme, week) };
}
