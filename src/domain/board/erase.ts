import { localDate } from '../log/local-date.ts';
import { datesOfWeek, isoDate } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';
import type { Programme } from '../programme/programme.ts';
import type { Attendance } from './attendance.ts';
import type { Heard } from './heard.ts';
import type { BoardSetup } from './setup.ts';

/** What a leader was told is kept for so many days after the event (DESIGN.md, section 9). */
export const KEPT_DAYS = 90;

/** All that is kept of one programme's people. */
export interface KeptOf {
  readonly heard: readonly Heard[];
  readonly days: readonly Attendance[];
  readonly setup?: BoardSetup | undefined;
}

/** UTC milliseconds of the latest thing that anybody said or did. */
function latestOf({ heard, days, setup }: KeptOf): number {
  const moments = [
    ...heard.flatMap(({ told, known, entries }) => [
      told?.at,
      known?.at,
      ...entries.flatMap(({ startedAt, toldAt }) => [startedAt, toldAt]),
    ]),
    ...days.flatMap(({ which, marks }) => [which.at, ...Object.values(marks).map(({ at }) => at)]),
    ...Object.values(setup?.expected ?? {}).map(({ at }) => at),
    setup?.keep?.at,
    ...(setup?.forgotten ?? []).map(({ at }) => at),
  ];
  return moments.reduce<number>((latest, at = 0) => Math.max(latest, at), 0);
}

/** The day of the event; without one the Sunday of the last week; without dates nothing. */
const eventOf = ({ goal, startDate, weeks }: Programme): string | undefined =>
  goal.date ?? datesOfWeek(startDate, weeks.length)?.sunday;

/**
 * The local date from which what is known of a programme's people goes: 90 days after the event,
 * after the end of the last week where the event has no date, and after the latest thing heard
 * where nothing has one or the programme is not here.
 *
 * @returns nothing: it is kept, or there is nothing
 */
export function goesOn(programme: Programme | undefined, kept: KeptOf): string | undefined {
  if (kept.setup?.keep?.on === true) return undefined;
  if (kept.heard.length + kept.days.length === 0 && kept.setup === undefined) return undefined;
  const from = (programme && eventOf(programme)) ?? localDate(latestOf(kept), 0);
  const day = dayOf(from);
  return day === undefined ? undefined : isoDate(day + KEPT_DAYS);
}

/** Whether that day has come. @param today local date, ISO 8601 */
export const isDue = (goes: string | undefined, today: string): boolean =>
  goes !== undefined && goes <= today;
