import type { Told } from '../../copy/back.ts';
import { dayText } from '../../copy/back.ts';
import type { WeekBack } from '../../domain/back/weeks.ts';

/** A number of each week that had a session. */
export const toldOf = (
  weeks: readonly WeekBack[],
  value: (week: WeekBack) => number | undefined,
): readonly Told[] =>
  weeks.flatMap((week) => {
    const found = week.sessions === 0 ? undefined : value(week);
    return found === undefined ? [] : [{ monday: week.monday, value: found }];
  });

/** Rows of a table by weeks, the latest first as in the list of sessions. */
export const rowsOf = (
  weeks: readonly WeekBack[],
  cells: (week: WeekBack) => readonly string[],
): readonly (readonly string[])[] =>
  weeks.map((week) => [dayText(week.monday, 'long'), ...cells(week)]).reverse();
